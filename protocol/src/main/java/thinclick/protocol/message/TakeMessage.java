package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.json.Absent;
import thinclick.protocol.json.Check;
import tools.jackson.databind.annotation.JsonDeserialize;

/** What a player says of a take: attacks and their lengths, what was heard of it and missed. */
public sealed interface TakeMessage extends ClientMessage {
  /**
   * Attacks of one take; numbered from 1 for each player and take, across reconnects.
   *
   * @param firstSeq the number of the first one here; the others follow it
   */
  record Attacks(String takeId, long epoch, long firstSeq, List<WireAttack> attacks)
      implements TakeMessage {
    public Attacks {
      Limits.id("takeId", takeId);
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      Check.range("firstSeq", firstSeq, 1L, Check.MAX_SAFE);
      attacks = Check.list("attacks", attacks);
      Check.size("attacks", attacks, 1, 64);
    }

    @Override
    public void to(Handler handler) {
      handler.onAttacks(this);
    }
  }

  /** One attack on its way; its player is the sender. */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record WireAttack(
      long micros,
      @Nullable Long rawMicros,
      @Nullable Integer velocity,
      @Nullable Integer pitch,
      @Nullable Double lengthMillis,
      @Nullable Double lateByMillis,
      @JsonInclude(JsonInclude.Include.NON_DEFAULT)
          @JsonDeserialize(using = Absent.MeansFalse.class)
          boolean unsure) {
    public WireAttack {
      Check.range("micros", micros, 0L, Check.MAX_SAFE);
      if (rawMicros != null) {
        Check.range("rawMicros", rawMicros.longValue(), 0L, Check.MAX_SAFE);
      }
      Check.range("velocity", velocity, 1, 127);
      Check.range("pitch", pitch, 0, 127);
      Check.range("lengthMillis", lengthMillis, 0, 3_600_000);
      Check.range("lateByMillis", lateByMillis, 0, 60_000);
    }

    /** The same attack, held for so long; null where that is not known. */
    public WireAttack withLength(@Nullable Double heldMillis) {
      return new WireAttack(micros, rawMicros, velocity, pitch, heldMillis, lateByMillis, unsure);
    }

    /** A tap without pitch or length. */
    public static WireAttack tap(long micros) {
      return new WireAttack(micros, null, null, null, null, null, false);
    }
  }

  /**
   * How long attacks were held, which is known only once they are released; of attacks that the
   * server has said are stored. The first length of an attack stays.
   */
  record Lengths(String takeId, long epoch, List<AttackLength> items) implements TakeMessage {
    public Lengths {
      Limits.id("takeId", takeId);
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      items = Check.list("items", items);
      Check.size("items", items, 1, 64);
    }

    @Override
    public void to(Handler handler) {
      handler.onLengths(this);
    }
  }

  /**
   * How long one attack was held.
   *
   * @param seq the attack's number
   */
  record AttackLength(long seq, double lengthMillis) {
    public AttackLength {
      Check.range("seq", seq, 1L, Check.MAX_SAFE);
      Check.range("lengthMillis", lengthMillis, 0.0, 3_600_000.0);
    }
  }

  /** The player has sent everything that was played, up to {@code lastSeq} (0: nothing). */
  record PlayedThrough(String takeId, long lastSeq) implements TakeMessage {
    public PlayedThrough {
      Limits.id("takeId", takeId);
      Check.range("lastSeq", lastSeq, 0L, Check.MAX_SAFE);
    }

    @Override
    public void to(Handler handler) {
      handler.onPlayedThrough(this);
    }
  }

  /**
   * How this player hears the others, from the next take on; while a take runs, of that take too,
   * so that a delay measured in it is written into it.
   *
   * @param delayMillis from another's attack to this player's ear, one way, buffers included; 0
   *     where nothing was measured
   */
  record HearsOthers(Hearing.Mode mode, double delayMillis) implements TakeMessage {
    public HearsOthers {
      Check.present("mode", mode);
      Check.range("delayMillis", delayMillis, 0.0, 10_000.0);
    }

    @Override
    public void to(Handler handler) {
      handler.onHearsOthers(this);
    }
  }

  /** The click did not sound as planned at this player's computer between two room times. */
  record ClickInterrupted(String takeId, long epoch, long fromMicros, long toMicros)
      implements TakeMessage {
    public ClickInterrupted {
      checkSpan(takeId, epoch, fromMicros, toMicros);
    }

    @Override
    public void to(Handler handler) {
      handler.onClickInterrupted(this);
    }
  }

  /**
   * This player's computer slept in a take: what is written there was not left out.
   *
   * @param fromMicros when it last ran; room time of the take's epoch
   * @param toMicros when it ran again
   */
  record Asleep(String takeId, long epoch, long fromMicros, long toMicros) implements TakeMessage {
    public Asleep {
      checkSpan(takeId, epoch, fromMicros, toMicros);
    }

    @Override
    public void to(Handler handler) {
      handler.onAsleep(this);
    }
  }

  private static void checkSpan(String takeId, long epoch, long fromMicros, long toMicros) {
    Limits.id("takeId", takeId);
    Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
    Check.range("fromMicros", fromMicros, 0L, Check.MAX_SAFE);
    Check.range("toMicros", toMicros, fromMicros, Check.MAX_SAFE);
  }
}
