package thinclick.protocol.message;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.TakeMessage.Attacks;
import thinclick.protocol.message.TakeMessage.WireAttack;

/**
 * Reads {@code attacks}, the one message that comes by the thousand, where it is written to the
 * letter as {@link MessageCodec#write(ClientMessage)} writes it. It refuses nothing and explains
 * nothing: whatever is written otherwise, has a fraction or is out of its range is left to the
 * strict reader, which alone decides what is taken.
 */
final class AtAGlance {
  private static final String BEGIN = "{\"type\":\"attacks\",\"takeId\":\"";
  private static final String EPOCH = "\",\"epoch\":";
  private static final String FIRST_SEQ = ",\"firstSeq\":";
  private static final String ATTACKS = ",\"attacks\":[";
  private static final String MICROS = "{\"micros\":";
  private static final String RAW_MICROS = ",\"rawMicros\":";
  private static final String VELOCITY = ",\"velocity\":";
  private static final String PITCH = ",\"pitch\":";
  private static final String UNSURE = ",\"unsure\":true";

  private static final int LONGEST_ID = 32;
  private static final int MOST_ATTACKS = 64;

  /** Any number of so many digits is below 2^53. */
  private static final int MOST_DIGITS = 15;

  /** What is no number here; every number of a message is 0 or more. */
  private static final long NONE = -1;

  private final String json;
  private int at;

  private AtAGlance(String json) {
    this.json = json;
  }

  /** The message; null where it is another, or is to be read with care. */
  static @Nullable Attacks attacks(String json) {
    return json.startsWith(BEGIN) && json.length() <= MessageCodec.MAX_CLIENT_FRAME
        ? new AtAGlance(json).attacks()
        : null;
  }

  private @Nullable Attacks attacks() {
    at = BEGIN.length();
    int end = json.indexOf('"', at);
    if (end <= at || end > at + LONGEST_ID || !plain(at, end)) {
      return null;
    }
    String takeId = json.substring(at, end);
    at = end;
    long epoch = number(EPOCH);
    long firstSeq = number(FIRST_SEQ);
    if (epoch == NONE || firstSeq < 1 || !passes(ATTACKS)) {
      return null;
    }
    List<WireAttack> attacks = new ArrayList<>(1);
    do {
      WireAttack attack = attack();
      if (attack == null || attacks.size() == MOST_ATTACKS) {
        return null;
      }
      attacks.add(attack);
    } while (passes(","));
    return passes("]}") && at == json.length()
        ? new Attacks(takeId, epoch, firstSeq, attacks)
        : null;
  }

  private @Nullable WireAttack attack() {
    long micros = number(MICROS);
    Long rawMicros = comes(RAW_MICROS) ? (Long) number(RAW_MICROS) : null;
    Integer velocity = comes(VELOCITY) ? (Integer) small(VELOCITY, 1) : null;
    Integer pitch = comes(PITCH) ? (Integer) small(PITCH, 0) : null;
    boolean unsure = passes(UNSURE);
    boolean readable =
        micros != NONE
            && (rawMicros == null || rawMicros != NONE)
            && (velocity == null || velocity != NONE)
            && (pitch == null || pitch != NONE)
            && passes("}");
    return readable ? new WireAttack(micros, rawMicros, velocity, pitch, null, null, unsure) : null;
  }

  /** Printable ASCII without an escape. */
  private boolean plain(int begin, int end) {
    for (int i = begin; i < end; i++) {
      char c = json.charAt(i);
      if (c <= ' ' || c > '~' || c == '\\') {
        return false;
      }
    }
    return true;
  }

  private boolean comes(String text) {
    return json.startsWith(text, at);
  }

  private boolean passes(String text) {
    boolean here = comes(text);
    at += here ? text.length() : 0;
    return here;
  }

  /** From {@code least} to 127. */
  private int small(String name, int least) {
    long value = number(name);
    return value < least || value > 127 ? (int) NONE : (int) value;
  }

  /** A whole number of 0 or more behind its name, as JSON writes it. */
  private long number(String name) {
    if (!passes(name)) {
      return NONE;
    }
    int begin = at;
    long value = 0;
    while (at < json.length() && json.charAt(at) >= '0' && json.charAt(at) <= '9') {
      if (at - begin == MOST_DIGITS) {
        return NONE;
      }
      value = 10 * value + (json.charAt(at++) - '0');
    }
    boolean none = at == begin || (at - begin > 1 && json.charAt(begin) == '0');
    return none ? NONE : value;
  }
}
