package thinclick.client.window.words;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.protocol.message.ErrorCode;

/**
 * What hosts and lines say, in the window's language. They speak English on the wire, short and for
 * engineers. What a player may meet has a sentence here, every other refusal is known by its words
 * ({@link Complaints}) or at least by its code; what has neither is passed on as it came, in
 * English and said to be so.
 */
public final class FromAfar {
  /** What is said on the wire, and the key of its sentence; groups fill the blanks. */
  private record Known(Pattern said, String key) {
    Known(String said, String key) {
      this(Pattern.compile(said, Pattern.DOTALL), key);
    }
  }

  /** Which of what is written to come in somebody far away complains of. */
  public enum About {
    NAME,
    ADDRESS,
    WORD,
    /** None of them: what is written may be right another time. */
    NOTHING
  }

  private static final String WHERE = "(?:[\\w.\\[\\]-]+: )?";

  private static final List<Known> KNOWN =
      List.of(
          new Known(WHERE + "the leader lets nobody new in now", "afar.locked"),
          new Known(WHERE + "\"(.+)\" is taken", "afar.nameTaken"),
          new Known(WHERE + "the room has (\\d+) members", "afar.roomFull"),
          new Known(WHERE + "expected a player in the room, found none", "afar.nobody"),
          new Known(WHERE + "expected material to be chosen first", "afar.nothingChosen"),
          new Known(WHERE + "only the leader may do this", "afar.leaderOnly"),
          new Known(WHERE + "expected a leader who has been gone for .*", "afar.leaderHere"),
          new Known(WHERE + "the host cannot write to its disk.*", "afar.disk"),
          new Known(WHERE + "the host's database refuses this for good.*", "afar.refused"),
          new Known("given up (\\d+) attacks: .*", "afar.givenUp"),
          new Known(".*expected a database that no other host has.*", "afar.database"),
          new Known("no room of that word", "afar.noRoom"),
          new Known("removed by the leader", "afar.removed"),
          new Known("the room was closed", "afar.closed"),
          new Known("the host is going", "afar.going"),
          new Known("the host is full", "afar.full"),
          new Known("replaced by a newer connection", "afar.replaced"),
          new Known("no common version", "afar.version"),
          new Known("left", "afar.left"),
          new Known("no host", "afar.noHost"),
          new Known("no server answers at (.+)", "afar.nobodyThere"),
          new Known("the server does not answer|the line was cut", "afar.cut"),
          new Known(
              "the server at (.+) is not the one of the join link: its certificate has the code"
                  + " (.+), the link's is (.+); ask.*",
              "afar.otherThanLinked"),
          new Known(
              "the server at (.+) is not the one that was there before: its certificate has the"
                  + " code (.+), then it was (.+); come in.* out of (.+) where.*",
              "afar.otherThanBefore"),
          new Known("nobody vouches for the certificate of (.+); come in.*", "afar.unvouched"),
          new Known(
              "first meeting with (.+): its certificate has the code (.+)", "afar.firstMeeting"));

  /** Where the code tells a player more than what was said with it. */
  private static final Set<ErrorCode> BY_CODE =
      Set.of(
          ErrorCode.STALE_REVISION,
          ErrorCode.WRONG_EPOCH,
          ErrorCode.SEQ_CONFLICT,
          ErrorCode.UNKNOWN_TYPE);

  private final Words words;

  public FromAfar(Words words) {
    this.words = words;
  }

  /** The sentence of what was refused. */
  public String say(Refused refused) {
    ErrorCode code = refused.code();
    if (code != null && BY_CODE.contains(code)) {
      return words.say(key(code));
    }
    Optional<String> known = known(refused.says());
    if (known.isPresent()) {
      return known.get();
    }
    if (words.language().equals(Locale.ENGLISH)) {
      return refused.says();
    }
    return code == null ? words.say("afar.other", refused.says()) : words.say(key(code));
  }

  /** The sentence of what was said without a code. */
  public String say(String english) {
    return say(new Refused(null, english));
  }

  /** What of all that is written to come in was not right, in what a host or a line said. */
  public static About about(String english) {
    for (Known one : KNOWN) {
      if (one.said().matcher(english).matches()) {
        return switch (one.key()) {
          case "afar.nameTaken" -> About.NAME;
          case "afar.noRoom" -> About.WORD;
          case "afar.nobodyThere",
              "afar.otherThanLinked",
              "afar.otherThanBefore",
              "afar.unvouched" ->
              About.ADDRESS;
          default -> About.NOTHING;
        };
      }
    }
    return About.NOTHING;
  }

  private Optional<String> known(String english) {
    String said = english.replaceAll("; trying again in \\d+ ms$", "");
    for (Known one : KNOWN) {
      Matcher matcher = one.said().matcher(said);
      if (matcher.matches()) {
        Object[] blanks = new Object[matcher.groupCount()];
        for (int i = 0; i < blanks.length; i++) {
          blanks[i] = matcher.group(i + 1);
        }
        return Optional.of(words.say(one.key(), blanks));
      }
    }
    return words.complaints().say(said);
  }

  private static String key(ErrorCode code) {
    return switch (code) {
      case BAD_FIELD -> "afar.code.badField";
      case UNKNOWN_TYPE -> "afar.code.unknownType";
      case WRONG_PHASE -> "afar.code.wrongPhase";
      case NOT_ALLOWED -> "afar.code.notAllowed";
      case STALE_REVISION -> "afar.code.staleRevision";
      case NAME_TAKEN -> "afar.code.nameTaken";
      case ROOM_FULL -> "afar.code.roomFull";
      case WRONG_EPOCH -> "afar.code.wrongEpoch";
      case SEQ_CONFLICT -> "afar.code.seqConflict";
      case STORE_UNAVAILABLE -> "afar.disk";
      case UNCERTAIN_CLOCK -> "afar.code.uncertainClock";
    };
  }
}
