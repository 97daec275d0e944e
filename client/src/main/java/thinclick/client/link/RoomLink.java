package thinclick.client.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.clock.ClockView;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;

/**
 * One player's way into a room, kept open: it joins, follows the room's clock, sends attacks until
 * the server has stored them, and comes back by itself after a cut.
 *
 * <p>Methods may be called from any thread; the listener is called from the link's own.
 */
public final class RoomLink implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(RoomLink.class);

  /** A key that is held longer is one that somebody has put a book on, milliseconds. */
  private static final double LONGEST_MILLIS = 3_600_000;

  private final LinkOptions options;
  private final RoomAddress address;
  private final Pass pass;
  private final Conversation talk;
  private final LeaderRequests lead;
  private volatile double chairLatencyMillis;

  private RoomLink(LinkOptions options, RoomAddress address, Pass pass, RoomListener listener) {
    this.options = options;
    this.address = address;
    this.pass = pass;
    this.talk = new Conversation(options, address, pass, listener);
    this.lead = new LeaderRequests(talk);
  }

  /** Opens a room and joins it as its leader; the word is known once {@code welcome} has come. */
  public static RoomLink open(
      LinkOptions options, RoomAddress address, String name, RoomListener listener) {
    RoomLink link = new RoomLink(options, address, new Pass(name, Role.LEADER, null), listener);
    options.loop().run(link.talk::connect);
    return link;
  }

  /** Joins a room by its word. */
  public static RoomLink join(
      LinkOptions options,
      RoomAddress address,
      String word,
      String name,
      Role role,
      RoomListener listener) {
    RoomLink link = new RoomLink(options, address, new Pass(name, role, word), listener);
    options.loop().run(link.talk::connect);
    return link;
  }

  /**
   * Goes on where an earlier run of the program ended: brings the attacks that its journal still
   * holds, as the same player, and may play on. Tries until the server answers.
   *
   * @throws BadInput where the file is not a journal, or another program has it open
   */
  public static RoomLink resume(LinkOptions options, Path journalFile, RoomListener listener) {
    JournalFile journal = JournalFile.resume(journalFile);
    JournalFile.Bearer bearer = journal.bearer();
    RoomLink link = of(bearer, options, RoomAddress.parse(bearer.server()), listener);
    options.loop().run(() -> link.talk.goOn(journal));
    return link;
  }

  /**
   * Comes back into a room that an earlier run was in, as the same player, and as its leader where
   * that run led. Attacks that are still in its journal are brought along.
   *
   * @param at where the host is now
   */
  public static RoomLink comeBack(
      LinkOptions options, LeftRoom left, RoomAddress at, RoomListener listener) {
    RoomLink link = of(left.bearer(), options, at, listener);
    options.loop().run(() -> link.talk.goOn(reopened(left.journal())));
    return link;
  }

  private static @Nullable JournalFile reopened(Path journal) {
    try {
      return Files.exists(journal) ? JournalFile.resume(journal) : null;
    } catch (BadInput taken) {
      LOG.info("its attacks stay where they are: {}", taken.getMessage());
      return null;
    }
  }

  private static RoomLink of(
      JournalFile.Bearer bearer, LinkOptions options, RoomAddress at, RoomListener listener) {
    return new RoomLink(options, at, Pass.of(bearer), listener);
  }

  /** The journals in a folder whose attacks nobody has brought to their server yet. */
  public static List<Path> unsent(Path journalFolder) throws IOException {
    return JournalFile.leftIn(journalFolder);
  }

  // ------------------------------------------------------------------ what a player does

  /**
   * Stamps an attack with room time and sends it; kept and sent again until it is stored. That the
   * player has stopped is said by itself, a second after the take.
   *
   * @return its room time in microseconds, also where no take runs and it goes nowhere
   */
  public long sendAttack(PlayedAttack attack) {
    WireAttack wire = attack.stamped(clock(), chairLatencyMillis);
    options.loop().run(() -> talk.delivery().add(wire, attack));
    return wire.micros();
  }

  /**
   * An attack that was sent was released; its length is kept and sent again until it is stored.
   *
   * @param attack the very one that was sent
   * @param nanos when it was released, this computer's monotonic clock
   */
  public void released(PlayedAttack attack, long nanos) {
    double millis = attack.heldMillis(nanos);
    if (millis <= LONGEST_MILLIS) {
      options.loop().run(() -> talk.delivery().released(attack, millis));
    }
  }

  /** Tells that the dealt part has been read. */
  public void ready(String dealId, boolean ready) {
    say(new PreparingMessage.Ready(dealId, ready));
  }

  /** From now on attacks are stamped earlier by the chair's delay. */
  public void chairDelay(double latencyMillis) {
    chairLatencyMillis = latencyMillis;
  }

  /** Tells the room how far the chair's delay is known; between takes only. */
  public void soundCheck(PreparingMessage.SoundCheck measured) {
    say(measured);
  }

  /** Tells the room how the others are heard here. */
  public void hears(TakeMessage.HearsOthers how) {
    options.loop().run(() -> talk.report(how));
  }

  /** Tells the room that the click broke off here; where the line is down, once it is back. */
  public void clickInterrupted(TakeNews.Announced take, long fromMicros, long toMicros) {
    ClientMessage broken =
        new TakeMessage.ClickInterrupted(
            take.takeId(), take.epoch(), Math.max(0, fromMicros), Math.max(0, toMicros));
    options.loop().run(() -> talk.report(broken));
  }

  /** Leaves the room for good and closes. */
  public CompletableFuture<Long> leave() {
    return talk.request((id, seen) -> new ClientMessage.Leave(id));
  }

  /** Takes the lead where the leader has been gone for long. */
  public CompletableFuture<Long> claimLead() {
    return talk.request((id, seen) -> new ClientMessage.ClaimLead(id));
  }

  /** What only a leader may ask; refused where somebody else leads. */
  public LeaderRequests lead() {
    return lead;
  }

  // ------------------------------------------------------------------ what anybody may ask

  /**
   * Asks what there is to rehearse; with a title for one drill whole. The answer comes to the
   * listener.
   */
  public CompletableFuture<Long> browse(@Nullable String title) {
    return talk.request((id, seen) -> new QuestionMessage.Browse(id, title));
  }

  /**
   * Asks for a take as a file, which comes to the listener; one that is too long for a frame is
   * gathered piece by piece first. Fails where the line is cut meanwhile: then nothing is kept.
   */
  public CompletableFuture<Long> keepTake(String takeId) {
    return new KeptTakes(talk, options.loop()).ask(takeId);
  }

  /**
   * Asks how it went up to a take: the own course, and where this one leads the band's. The answer
   * comes to the listener before this completes; fails where an older host does not know the word.
   */
  public CompletableFuture<Long> askCourse(String takeId) {
    return talk.request((id, seen) -> new QuestionMessage.AskCourse(id, takeId));
  }

  /** Asks for the fewest clicks that this band held; as {@link #askCourse}, for who leads. */
  public CompletableFuture<Long> askFewest(String title, double tempo) {
    return talk.request((id, seen) -> new QuestionMessage.AskFewest(id, title, tempo));
  }

  // ------------------------------------------------------------------ what is known

  /** Where the link stands. */
  public LinkState state() {
    return talk.state();
  }

  /** The server that it was asked to come to. */
  public RoomAddress address() {
    return address;
  }

  /** The room's word, null until a room that is being opened has one. */
  public @Nullable String word() {
    return pass.word();
  }

  /** What is believed of room time now; take one and use it for a whole decision. */
  public ClockView clock() {
    return talk.clock().view();
  }

  /** Room time at an instant of this computer's monotonic clock. */
  public long roomMicros(long nanos) {
    return clock().roomMicros(nanos);
  }

  /** The instant of this computer's monotonic clock at which the room's shows {@code micros}. */
  public long nanosOf(long micros) {
    return clock().nanosOf(micros);
  }

  /** Closes the connection; attacks not yet stored stay in the journal file, if there is one. */
  @Override
  public void close() {
    options.loop().run(() -> talk.end("left"));
  }

  /** The clock, for another chair at this computer. */
  ClockExchanges.Shared shared() {
    return talk.clock().shared();
  }

  private void say(ClientMessage message) {
    options.loop().run(() -> talk.send(message));
  }
}
