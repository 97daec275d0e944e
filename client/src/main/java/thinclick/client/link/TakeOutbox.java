package thinclick.client.link;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.TakeMessage.Attacks;
import thinclick.protocol.message.TakeMessage.Lengths;
import thinclick.protocol.message.TakeMessage.PlayedThrough;
import thinclick.protocol.message.TakeMessage.WireAttack;

/**
 * The attacks of one take that the server has not yet said it stored, numbered from 1. What was
 * sent stays until it is stored, so that a cut loses nothing; the numbers let the server drop what
 * comes twice.
 */
final class TakeOutbox {
  /** Most attacks in one message. */
  static final int BATCH = 64;

  /** Most attacks sent and not yet stored. */
  static final int IN_FLIGHT = 256;

  private final String takeId;
  private final long epoch;
  private final TakeLengths lengths;
  private final Deque<WireAttack> unstored = new ArrayDeque<>();
  private long storedThrough;
  private long sentThrough;
  private long lastSeq;
  private boolean finished;
  private boolean finishSaid;

  /**
   * @param storedThrough what the server already has of this take, 0 for nothing
   */
  TakeOutbox(String takeId, long epoch, long storedThrough) {
    this.takeId = takeId;
    this.epoch = epoch;
    this.lengths = new TakeLengths(takeId, epoch);
    this.storedThrough = storedThrough;
    this.sentThrough = storedThrough;
    this.lastSeq = storedThrough;
  }

  String takeId() {
    return takeId;
  }

  long epoch() {
    return epoch;
  }

  /** How long this take's attacks were held. */
  TakeLengths lengths() {
    return lengths;
  }

  /** Attacks that are not stored yet. */
  int unstored() {
    return unstored.size();
  }

  /** Attacks that are not stored yet, or without their length. */
  int waiting() {
    return unstored.size() + lengths.waiting(storedThrough);
  }

  /** Sent, but not stored yet. */
  boolean inFlight() {
    return sentThrough > storedThrough || lengths.inFlight();
  }

  /** Stored, finished and said so: nothing is left to do. */
  boolean settled() {
    return finished && finishSaid && unstored.isEmpty() && lengths.isEmpty();
  }

  boolean finished() {
    return finished;
  }

  /** Numbers an attack and keeps it; answers its number. */
  long add(WireAttack attack) {
    unstored.addLast(attack);
    return ++lastSeq;
  }

  /** The server has everything up to {@code throughSeq}; one who knows less changes nothing. */
  void stored(long throughSeq) {
    while (storedThrough < throughSeq && !unstored.isEmpty()) {
      unstored.removeFirst();
      storedThrough++;
    }
    if (storedThrough < throughSeq) {
      storedThrough = throughSeq;
      lastSeq = Math.max(lastSeq, throughSeq);
    }
    sentThrough = Math.max(sentThrough, storedThrough);
  }

  /** The line was cut: whatever is not stored is sent again. */
  void rewind() {
    sentThrough = storedThrough;
    finishSaid = false;
    lengths.rewind();
  }

  /** The next lengths to send, or null where all are sent that may be. */
  @Nullable Lengths nextLengths() {
    return lengths.nextBatch(storedThrough);
  }

  /** The next message to send, or null where all is sent or enough is in flight. */
  @Nullable Attacks nextBatch() {
    int inFlight = (int) (sentThrough - storedThrough);
    int count = Math.min(Math.min(BATCH, unstored.size() - inFlight), IN_FLIGHT - inFlight);
    if (count <= 0) {
      return null;
    }
    List<WireAttack> batch = new ArrayList<>(count);
    unstored.stream().skip(inFlight).limit(count).forEach(batch::add);
    Attacks message = new Attacks(takeId, epoch, sentThrough + 1, batch);
    sentThrough += count;
    return message;
  }

  /** The player has stopped playing: nothing is added any more. */
  void finish() {
    finished = true;
  }

  /**
   * What to say once everything was sent and every length is stored, or null where it is too early
   * or was said.
   */
  @Nullable PlayedThrough nextFinish() {
    if (!finished || finishSaid || sentThrough < lastSeq || !lengths.isEmpty()) {
      return null;
    }
    finishSaid = true;
    return new PlayedThrough(takeId, lastSeq);
  }
}
