package thinclick.client.window.session;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.LeaderRequests;
import thinclick.client.link.RoomLink;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Stock;

/** What a leader can ask of the room; a refusal comes back as the room's problem. */
public final class Lead {
  private static final int LEAD_MILLIS = 3_000;
  private static final int MOST_UNDONE = 20;

  private final Session session;
  private final Deque<Hand> dealt = new ArrayDeque<>();

  /**
   * All that a deal is made from; the same again gives the same parts.
   *
   * @param drill the material with its click plan
   * @param tempo beats a minute
   * @param seed settles every free choice
   * @param chairs playerIds in the order of chairs
   * @param levels that the figures are fitted to, by playerId; empty for what is written
   */
  public record Hand(
      Drill drill, double tempo, long seed, List<String> chairs, Map<String, Integer> levels) {
    /** What is written, for everybody. */
    public Hand(Drill drill, double tempo, long seed, List<String> chairs) {
      this(drill, tempo, seed, chairs, Map.of());
    }

    public Hand {
      chairs = List.copyOf(chairs);
      levels = Map.copyOf(levels);
    }
  }

  Lead(Session session) {
    this.session = session;
  }

  // ---------------------------------------------------------------- material and dealing

  /** A leader chooses from what the host has; own drills are asked for one by one. */
  void follow(RoomState before, RoomState now) {
    boolean leads = now.inside() && now.leader();
    if (leads && !(before.inside() && before.leader())) {
      session.ask(in -> in.browse(null));
    } else if (leads && !before.shelf().equals(now.shelf()) && before.shelf().missing().isEmpty()) {
      now.shelf().missing().forEach(title -> session.ask(in -> in.browse(title)));
    }
  }

  /** Chooses a drill with its click plan and a tempo. */
  public void choose(Drill drill, double tempo) {
    ask(room -> chosen(room, drill, tempo));
  }

  /** Chooses a drill of the stock by its title; one that was changed is brought along. */
  static CompletableFuture<Long> chosen(LeaderRequests room, Drill drill, double tempo) {
    boolean ofTheStock = Stock.has(drill.title()) && sameMaterial(Stock.find(drill.title()), drill);
    CompletableFuture<Long> material =
        ofTheStock ? room.material(drill.title()) : room.material(drill);
    return material.thenCompose(done -> room.plan(drill.stages(), tempo));
  }

  private static CompletableFuture<Long> dealt(LeaderRequests room, Hand hand) {
    return room.deal(hand.seed(), hand.chairs(), hand.levels());
  }

  private static boolean sameMaterial(Drill one, Drill other) {
    return one.equals(other.withStages(one.stages()));
  }

  /** Replaces the click plan and the tempo of what is chosen. */
  public void plan(List<Stage> stages, double tempo) {
    ask(room -> room.plan(stages, tempo));
  }

  /** Deals what is chosen. */
  public void deal(Hand hand) {
    remember(hand);
    ask(room -> dealt(room, hand));
  }

  private void remember(Hand hand) {
    dealt.push(hand);
    while (dealt.size() > MOST_UNDONE) {
      dealt.removeLast();
    }
  }

  /** Chooses and deals in one. */
  public void chooseAndDeal(Hand hand) {
    remember(hand);
    ask(room -> chosen(room, hand.drill(), hand.tempo()).thenCompose(done -> dealt(room, hand)));
  }

  /** Deals what is left of a take that was paused; there is nothing in it to be taken back. */
  public void dealRest(Hand rest) {
    ask(
        room ->
            room.plan(rest.drill().stages(), rest.tempo()).thenCompose(done -> dealt(room, rest)));
  }

  /** True where the last deal can be taken back: nobody has played it yet. */
  public boolean canUndo() {
    return !dealt.isEmpty() && session.state().leader() && session.state().phase() == Phase.DEALT;
  }

  /**
   * Takes the last deal back: what was dealt before is dealt again, the same parts to the same
   * chairs; before the first deal nothing is.
   *
   * @return what is dealt now, or null for nothing
   */
  public @Nullable Hand undo() {
    if (!canUndo()) {
      return null;
    }
    Hand undone = dealt.pop();
    Hand before = dealt.peek();
    if (before == null) {
      plan(undone.drill().stages(), undone.tempo()); // a plan alone takes the parts away
      return null;
    }
    ask(
        room ->
            chosen(room, before.drill(), before.tempo()).thenCompose(done -> dealt(room, before)));
    return before;
  }

  /** Forgets what was dealt; another room has other players. */
  void forget() {
    dealt.clear();
  }

  // ---------------------------------------------------------------- the take

  /** Announces the take that was dealt, after a count-in of one bar. */
  public void countIn() {
    Dealt now = session.state().dealt();
    if (now != null && session.state().phase() == Phase.DEALT) {
      ask(room -> room.start(now.dealId(), LEAD_MILLIS, 1));
    }
  }

  /** Ends the running take. */
  public void stop() {
    Announced announced = session.state().announced();
    if (announced != null && session.state().takeRuns()) {
      ask(room -> room.stop(announced.takeId()));
    }
  }

  /**
   * Changes the click of the running take.
   *
   * @param fromBar at least two bars ahead
   * @param rest the stages from there to the end
   */
  public void replan(int fromBar, List<Stage> rest) {
    Announced announced = session.state().announced();
    if (announced != null && session.state().takeRuns() && !rest.isEmpty()) {
      String takeId = announced.takeId();
      command((id, seen) -> new LeaderCommand.Replan(id, seen, takeId, fromBar, rest));
    }
  }

  // ---------------------------------------------------------------- people

  /** Two people change chairs; each comes as the other's number. */
  public void swap(String one, int itsChair, String other, int otherChair) {
    ask(
        room ->
            room.ask((id, seen) -> new LeaderCommand.Seat(id, seen, one, otherChair))
                .thenCompose(
                    done ->
                        room.ask((id, seen) -> new LeaderCommand.Seat(id, seen, other, itsChair))));
  }

  /** Gives somebody a chair. */
  public void seat(String playerId, int chair) {
    command((id, seen) -> new LeaderCommand.Seat(id, seen, playerId, chair));
  }

  /** Gives the chair of somebody absent to a stand-in that is in the room and has none. */
  public void standInFor(String playerId) {
    command((id, seen) -> new LeaderCommand.StandIn(id, seen, playerId));
  }

  /** Passes the lead on. */
  public void pass(String playerId) {
    command((id, seen) -> new LeaderCommand.PassLead(id, seen, playerId));
  }

  /** Sends somebody out. */
  public void remove(String playerId) {
    command((id, seen) -> new LeaderCommand.Remove(id, seen, playerId));
  }

  /** Lets nobody new in, or lets them in again. */
  public void lock(boolean locked) {
    command((id, seen) -> new LeaderCommand.Lock(id, seen, locked));
  }

  /** Lets players see each other's marks and keep whole takes, or no longer. */
  public void share(boolean shared) {
    command((id, seen) -> new LeaderCommand.Share(id, seen, shared));
  }

  /** Gives the room another word. */
  public void newWord() {
    command(LeaderCommand.NewWord::new);
  }

  /**
   * Writes a note; an empty one wipes out what was written.
   *
   * @param playerId to whom alone, or null for everybody
   */
  public void note(String text, @Nullable String playerId) {
    command((id, seen) -> new LeaderCommand.Note(id, seen, text, playerId));
  }

  /** Takes the lead where the leader has been gone for long. */
  public void claim() {
    session.ask(RoomLink::claimLead);
  }

  private void command(LeaderRequests.Command command) {
    ask(room -> room.ask(command));
  }

  private void ask(Function<LeaderRequests, CompletableFuture<Long>> request) {
    session.ask(link -> request.apply(link.lead()));
  }
}
