package thinclick.server.room;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Span;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;

/** The take: its start, its stages, a change of its click, its end. */
final class TakeDesk {
  private static final int TAKES_REMEMBERED = 4;
  private static final int REPLAN_BARS_AHEAD = 2;
  private static final int INTERRUPTIONS_KEPT = 64;

  private final Standing room;
  private final Telling telling;

  TakeDesk(Standing room, Telling telling) {
    this.room = room;
    this.telling = telling;
  }

  /** A take that was running when the room was written down is over; its host had died. */
  void afterRestart(RoomJournal.Opened opened) {
    TakeRun last = room.lastTake();
    if (last == null) {
      return;
    }
    if (room.phase == Phase.COUNT_IN || room.phase == Phase.TAKE) {
      RoomJournal.StoredTake found = opened.takes().get(last.id());
      Long lastMicros = found == null ? null : found.lastMicros();
      long start = last.announced.startMicros();
      stop(last, lastMicros == null ? start : Math.max(start, lastMicros), StopReason.INTERRUPTED);
    } else if (room.phase == Phase.REVIEW && last.stopped != null) {
      last.stop(last.stopped, room.now); // its review may have died with the host
    }
  }

  void start(LeaderCommand.Start command) {
    Dealt made = Objects.requireNonNull(room.dealt);
    long countIn = room.now + command.leadMillis() * 1_000L;
    StepGrid before = made.gridFrom(countIn);
    long start = before.instantOf((long) command.countInBars() * before.stepsPerBar());
    List<Part> parts = new ArrayList<>();
    for (Part part : made.parts()) {
      Member player = room.members.get(room.seatOf(part.player()));
      double uncertainty = player == null ? 0 : player.uncertaintyMillis();
      parts.add(
          part.edited()
              .uncertaintyMillis(uncertainty)
              .hearing(player == null ? null : player.hearing)
              .part());
    }
    Take written = made.takeFrom(start).withParts(parts);
    room.takeCount++;
    TakeNews.Announced announced =
        new TakeNews.Announced(
            room.id + "-t" + room.takeCount,
            made.dealId(),
            room.epoch,
            countIn,
            start,
            command.countInBars());
    TakeRun take = new TakeRun(announced, written, room.seats);
    room.takes.add(take);
    while (room.takes.size() > TAKES_REMEMBERED) {
      room.takes.remove(0);
    }
    room.lastReview = null;
    room.decide();
    room.out.append(new JournalEntry.TakeBegun(take.id(), written, take.seats));
    room.enter(Phase.COUNT_IN, "started by the leader");
    // Announced once the room is on the disk with it: a host that died between would know nothing
    // of what the players have begun.
    room.out.append(new JournalEntry.State(room.state()));
    for (String playerId : room.seats.keySet()) {
      Member player = room.members.get(playerId);
      if (player == null || !player.here()) {
        take.gone(playerId, countIn);
      }
    }
  }

  /** The room is on the disk, as it was when this was written. */
  void written(RoomState state) {
    TakeRun take = room.lastTake();
    if (take != null
        && !take.told
        && take.running()
        && state.takes().stream().anyMatch(each -> each.announced().takeId().equals(take.id()))) {
      take.told = true;
      telling.allAndKeep(take.announced);
    }
  }

  TakeRun running(String takeId) {
    TakeRun take = room.lastTake();
    if (take == null || !take.id().equals(takeId)) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, "takeId", "expected the running take, found \"" + takeId + "\"");
    }
    return take;
  }

  void replan(LeaderCommand.Replan command) {
    TakeRun take = running(command.takeId());
    StepGrid grid = take.written().grid();
    double bars = (room.now - grid.startMicros()) / (grid.stepMicros() * grid.stepsPerBar());
    long earliest = (long) Math.floor(bars) + REPLAN_BARS_AHEAD;
    int most = take.written().plan().bars() - 1;
    if (command.fromBar() < earliest || command.fromBar() > most) {
      throw new BadInput(
          "fromBar",
          "expected "
              + Math.max(0, earliest)
              + " to "
              + most
              + ", two bars ahead at least, found "
              + command.fromBar());
    }
    List<Stage> whole = Replanning.stages(take.written(), command.fromBar(), command.stages());
    TakeNews.Replanned replanned = new TakeNews.Replanned(take.id(), command.fromBar(), whole);
    take.replan(Replanning.with(take.written(), whole), replanned);
    room.out.append(new JournalEntry.Rewritten(take.id(), take.written()));
    room.decide();
    telling.allAndKeep(replanned);
  }

  /** How a player hears the others has changed: the running take says so as well. */
  void hears(Member player) {
    TakeRun take = room.lastTake();
    String seat = take == null ? null : take.seats.get(player.id);
    if (take == null || !take.running() || seat == null) {
      return;
    }
    rewrite(
        take,
        take.written()
            .withParts(
                take.written().parts().stream()
                    .map(
                        part ->
                            part.player().equals(seat)
                                ? part.edited().hearing(player.hearing).part()
                                : part)
                    .toList()));
  }

  /** The click broke off at somebody's computer. */
  void clickInterrupted(TakeMessage.ClickInterrupted message) {
    TakeRun take = room.remembered(message.takeId());
    expectEpoch(take, message.epoch());
    Span span = new Span(message.fromMicros(), message.toMicros());
    List<Span> spans = new ArrayList<>(take.written().clickInterrupted());
    if (spans.size() < INTERRUPTIONS_KEPT && !spans.contains(span)) {
      spans.add(span);
      rewrite(take, take.written().edited().clickInterrupted(spans).take());
      take.grown(room.now);
    }
  }

  /** A player's computer slept: away meanwhile, whoever notices it first. */
  void asleep(Member player, TakeMessage.Asleep message) {
    TakeRun take = room.remembered(message.takeId());
    if (!take.seats.containsKey(player.id)) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected a player with a part in the take");
    }
    expectEpoch(take, message.epoch());
    long latest = take.running() ? room.now : message.toMicros(); // nobody sleeps in advance
    long to = Math.min(message.toMicros(), latest);
    if (to > message.fromMicros() && take.sleeps(player.id)) {
      Span span = new Span(message.fromMicros(), to);
      room.out.append(new JournalEntry.Away(take.id(), player.id, span));
      take.grown(room.now);
    }
  }

  private static void expectEpoch(TakeRun take, long epoch) {
    if (epoch != take.announced.epoch()) {
      throw new Refusal(
          ErrorCode.WRONG_EPOCH,
          "epoch",
          "expected the take's, " + take.announced.epoch() + ", found " + epoch);
    }
  }

  private void rewrite(TakeRun take, Take changed) {
    take.rewrite(changed);
    room.out.append(new JournalEntry.Rewritten(take.id(), changed));
    room.changed = true;
  }

  void stop(TakeRun take, long atMicros, StopReason reason) {
    TakeNews.Stopped stopped = new TakeNews.Stopped(take.id(), atMicros, reason);
    take.goneSince()
        .forEach(
            (playerId, since) -> {
              if (atMicros > since) {
                room.out.append(
                    new JournalEntry.Away(take.id(), playerId, new Span(since, atMicros)));
              }
            });
    take.goneSince().clear();
    take.stop(stopped, room.now);
    room.out.append(new JournalEntry.TakeEnded(take.id(), atMicros, reason));
    room.decide();
    room.enter(Phase.REVIEW, "the take ended: " + reason.name().toLowerCase(Locale.ROOT));
    telling.allAndKeep(stopped);
  }

  /** When a stage, the first bar or the end is to be dealt with. */
  long wakeMicros() {
    TakeRun take = room.lastTake();
    if (take == null || !take.running()) {
      return TakeRun.NEVER;
    }
    long wake =
        room.phase == Phase.COUNT_IN ? take.announced.startMicros() : take.times().endMicros;
    return take.told && take.nextStage < take.times().stages()
        ? Math.min(wake, take.times().stageSaidMicros(take.nextStage))
        : wake;
  }

  void due() {
    TakeRun take = room.lastTake();
    if (take == null || !take.running()) {
      return;
    }
    while (take.told
        && take.nextStage < take.times().stages()
        && room.now >= take.times().stageSaidMicros(take.nextStage)) {
      int stage = take.nextStage++;
      telling.all(
          new TakeNews.StageNear(
              take.id(),
              stage,
              take.written().plan().fromBar(stage),
              take.times().stageMicros(stage)));
    }
    if (room.phase == Phase.COUNT_IN && room.now >= take.announced.startMicros()) {
      room.enter(Phase.TAKE, "the count-in is over");
    }
    if (room.now >= take.times().endMicros) {
      stop(take, take.times().nominalEndMicros, StopReason.FINISHED);
    }
  }
}
