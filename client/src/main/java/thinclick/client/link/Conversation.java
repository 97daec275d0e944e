package thinclick.client.link;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;

/**
 * What a link and its room say to each other, line after line: who came in stays the same, what was
 * not said while the line was down is said once it is back. The link's thread, unless stated.
 */
final class Conversation {
  private static final Logger LOG = LoggerFactory.getLogger(Conversation.class);

  private final LinkOptions options;
  private final RoomAddress address;
  private final Pass pass;
  private final RoomListener listener;
  private final Requests requests = new Requests();
  private final RoomClock clock;
  private final Line line;
  private final Delivery delivery;
  private final List<ClientMessage> unsaid = new ArrayList<>();
  private Consumer<AnswerMessage.TakePiece> pieces = piece -> {};

  private volatile LinkState state = LinkState.CONNECTING;
  private boolean welcomed;
  private boolean plays;
  private long revision;

  Conversation(LinkOptions options, RoomAddress address, Pass pass, RoomListener listener) {
    this.options = options;
    this.address = address;
    this.pass = pass;
    this.listener = listener;
    long seed = pass.name().hashCode();
    this.clock = new RoomClock(options, seed, this::send, this::report, listener);
    this.line = new Line(address, options, seed, new Ear());
    this.delivery =
        new Delivery(
            options.loop(), () -> state == LinkState.ONLINE, this::send, listener::waitingChanged);
  }

  /** Where it stands; from any thread. */
  LinkState state() {
    return state;
  }

  /** Room time; its view from any thread. */
  RoomClock clock() {
    return clock;
  }

  /** What was played and is not yet stored. */
  Delivery delivery() {
    return delivery;
  }

  void connect() {
    line.connect();
  }

  /** Goes on as somebody who was in before, with what is left of that; null: nothing. */
  void goOn(@Nullable JournalFile journal) {
    if (journal != null) {
      delivery.restore(journal);
    }
    welcomed = true;
    line.worthTrying();
    line.connect();
  }

  // ------------------------------------------------------------------ what is said to it

  /** What the line tells. */
  private final class Ear implements Line.Owner {
    @Override
    public void opened() {
      send(pass.firstWords(options, revision));
    }

    @Override
    public void received(String json, long arrivedNanos) {
      ServerMessage message;
      try {
        message = MessageCodec.readServer(json);
      } catch (MessageCodec.UnknownType later) {
        LOG.debug("a message of a later version: {}", later.getMessage());
        return;
      } catch (BadInput bad) {
        LOG.warn("a message that cannot be read: {}", bad.getMessage());
        return;
      }
      Conversation.this.received(message, arrivedNanos);
    }

    @Override
    public void cut(String says) {
      offline();
      change(welcomed ? LinkState.AWAY : LinkState.CONNECTING, says);
    }

    @Override
    public void over(String says) {
      end(says);
    }
  }

  private void received(ServerMessage message, long arrivedNanos) {
    if (message instanceof AnswerMessage.ClockAnswer answer) {
      clock.answered(answer, arrivedNanos);
      return;
    }
    if (message instanceof TakeNews.Stored stored) {
      delivery.stored(stored);
    } else if (message instanceof TakeNews.LengthsStored stored) {
      delivery.lengthsStored(stored);
    } else if (message instanceof ServerMessage.Welcome welcome) {
      welcomed(welcome);
    } else if (message instanceof ServerMessage.Room room) {
      revision = room.revision();
      plays = room.dealt() != null && room.dealt().own() != null;
      if (room.announced() != null) {
        takeKnown(room.announced(), room.throughSeq(), room.phase());
      }
    } else if (message instanceof ServerMessage.Roster roster) {
      revision = roster.revision();
    } else if (message instanceof ServerMessage.Dealt dealt) {
      revision = dealt.revision();
      plays = dealt.own() != null;
    } else if (message instanceof TakeNews.Announced announced) {
      begin(announced, 0);
      clock.hold(announced);
    } else if (message instanceof TakeNews.Stopped stopped) {
      delivery.finishSoon(stopped.takeId());
      clock.release(stopped);
    } else if (message instanceof AnswerMessage.TakePiece piece) {
      pieces.accept(piece);
    } else if (message instanceof ServerMessage.Done done) {
      revision = done.revision();
      requests.done(done);
    } else if (message instanceof ServerMessage.Problem problem) {
      problem(problem);
      if (problem.code() == ErrorCode.UNKNOWN_TYPE) {
        return; // an older server: nothing that a player could do anything about
      }
    } else if (message instanceof ServerMessage.Goodbye goodbye) {
      line.askedToWait(goodbye.retryAfterMillis());
    }
    Dispatch.to(listener, message);
  }

  private void welcomed(ServerMessage.Welcome welcome) {
    welcomed = true;
    pass.welcomed(welcome);
    revision = welcome.revision();
    line.welcomed();
    Path folder = options.journalFolder();
    if (folder != null) {
      delivery.keepIn(folder, welcome.playerId(), pass.bearer(address, welcome));
    }
    String trust = line.trustSays();
    change(
        LinkState.ONLINE, "in the room " + welcome.room() + (trust.isEmpty() ? "" : "; " + trust));
    clock.online(welcome.epoch());
    delivery.online();
    unsaid.forEach(this::send);
    unsaid.clear();
  }

  private void begin(TakeNews.Announced announced, long throughSeq) {
    if (plays) {
      delivery.begin(announced.takeId(), announced.epoch(), throughSeq);
      clock.plays(announced);
    }
  }

  private void takeKnown(TakeNews.Announced announced, long throughSeq, ServerMessage.Phase phase) {
    begin(announced, throughSeq);
    if (phase == ServerMessage.Phase.REVIEW) {
      delivery.finishSoon(announced.takeId());
    } else {
      clock.hold(announced);
    }
    delivery.pump();
  }

  private void problem(ServerMessage.Problem problem) {
    requests.refused(problem);
    if (!welcomed) {
      end(problem.says()); // not let in: another name may be, which is for the player to choose
      return;
    }
    switch (problem.code()) {
      case STORE_UNAVAILABLE -> delivery.storeUnavailable();
      case NOT_ALLOWED, WRONG_EPOCH -> {
        String takeId = problem.takeId();
        int lost = takeId == null ? 0 : delivery.refusedForGood(takeId, problem.says());
        if (lost > 0) {
          listener.attacksRefused(lost, problem.says());
        }
      }
      case UNKNOWN_TYPE -> {
        if (problem.requestId() == null) { // else a question that an older host does not know
          delivery.lengthsNotTaken();
        }
      }
      case BAD_FIELD -> {
        if ("items".equals(problem.field())) {
          delivery.lengthsNotTaken();
        }
      }
      default -> {}
    }
    LOG.debug("the server says {}: {}", problem.code(), problem.says());
  }

  private void offline() {
    delivery.pause();
    clock.offline();
    requests.cut("the line was cut before the answer came");
  }

  /** Closes for good; {@code says} is why. */
  void end(String says) {
    if (state == LinkState.CLOSED) {
      return;
    }
    change(LinkState.CLOSED, says);
    offline();
    delivery.close();
    line.end();
  }

  private void change(LinkState next, String says) {
    LOG.debug("{} {} -> {}: {}", pass.name(), state, next, says);
    state = next;
    listener.linkChanged(next, says);
  }

  /** Who takes the pieces of a take from now on. */
  void onPiece(Consumer<AnswerMessage.TakePiece> taker) {
    pieces = taker;
  }

  /** Tells the listener as if the server had said it in one frame. */
  void gathered(AnswerMessage.KeptTake take) {
    Dispatch.to(listener, take);
  }

  // ------------------------------------------------------------------ what it is asked to say

  /** Says it now; where the line is down it is lost. */
  void send(ClientMessage message) {
    line.send(message);
  }

  /** Posts now, or as soon as the line is back. */
  void report(ClientMessage message) {
    options
        .loop()
        .run(
            () -> {
              if (state == LinkState.ONLINE) {
                send(message);
              } else {
                unsaid.add(message);
              }
            });
  }

  /** Makes something that is answered, for the room as it was last seen. */
  @FunctionalInterface
  interface Asks {
    /** The message, by its request's number and the revision last heard of. */
    ClientMessage with(long requestId, long revision);
  }

  /**
   * Asks for something and answers with the revision afterwards.
   *
   * @param message makes it, from its request's number and the last revision seen
   */
  CompletableFuture<Long> request(Asks message) {
    CompletableFuture<Long> answer = new CompletableFuture<>();
    options
        .loop()
        .run(
            () -> {
              long id = requests.begin(answer);
              try {
                send(message.with(id, revision));
              } catch (BadInput bad) {
                answer.completeExceptionally(bad);
              }
            });
    return answer;
  }
}
