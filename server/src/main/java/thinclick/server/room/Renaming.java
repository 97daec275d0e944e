package thinclick.server.room;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage.Dealt;

/**
 * A name that was put right in the class's list while its room is open: the room says it from then
 * on, in what is dealt and in the takes it remembers, which are reviewed again. A take that runs is
 * played through under the names it was dealt with.
 */
final class Renaming {
  private final Standing room;
  private final Telling telling;
  private final List<RoomEvent.Renamed> waiting = new ArrayList<>();

  Renaming(Standing room, Telling telling) {
    this.room = room;
    this.telling = telling;
  }

  void renamed(RoomEvent.Renamed event) {
    waiting.add(event);
  }

  /** Follows what waits, once no take runs. */
  void due() {
    if (waiting.isEmpty() || room.runningTake().isPresent()) {
      return;
    }
    List<RoomEvent.Renamed> now = List.copyOf(waiting);
    waiting.clear();
    boolean changed = false;
    for (RoomEvent.Renamed each : now) {
      Nickname from = name(each.from());
      Nickname to = name(each.to());
      if (from != null && to != null) {
        String takeId = each.takeId();
        changed |= takeId == null && member(from, to);
        for (TakeRun take : room.takes) {
          if (takeId == null || take.id().equals(takeId)) {
            changed |= take(take, from, to);
          }
        }
      }
    }
    if (changed) {
      room.change();
      telling.wholeRoom();
    }
  }

  private static @Nullable Nickname name(String written) {
    try {
      return Nickname.of(written);
    } catch (BadInput ofNoRoom) {
      return null;
    }
  }

  private boolean member(Nickname from, Nickname to) {
    Member member = room.members.named(from);
    Member there = room.members.named(to);
    if (member == null || (there != null && there != member)) {
      return false; // two of one name could not be told apart
    }
    member.name = to;
    String dealtAs = room.seats.get(member.id);
    Dealt made = room.dealt;
    if (dealtAs != null && made != null) {
      room.seats.put(member.id, to.shown());
      room.dealt = renamed(made, dealtAs, to.shown());
    }
    return true;
  }

  private static Dealt renamed(Dealt made, String from, String to) {
    Pattern said =
        Pattern.compile("(?<![\\p{L}\\p{N}])" + Pattern.quote(from) + "(?![\\p{L}\\p{N}])");
    return made.renamed(
        name -> name.equals(from) ? to : name,
        sentence -> said.matcher(sentence).replaceAll(Matcher.quoteReplacement(to)));
  }

  private boolean take(TakeRun take, Nickname from, Nickname to) {
    Optional<String> old =
        take.seats.values().stream()
            .filter(name -> Nickname.of(name).key().equals(from.key()))
            .findFirst();
    boolean taken =
        take.seats.values().stream()
            .anyMatch(
                name -> Nickname.of(name).key().equals(to.key()) && !old.equals(Optional.of(name)));
    if (old.isEmpty() || taken) {
      return false;
    }
    take.renamed(old.get(), to.shown());
    room.out.append(new JournalEntry.Renamed(take.id(), old.get(), to.shown()));
    take.grown(room.now);
    return true;
  }
}
