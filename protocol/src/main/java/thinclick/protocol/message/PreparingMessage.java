package thinclick.protocol.message;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Check;

/** How well a member knows room time and the own chair's delay, and whether it is ready. */
public sealed interface PreparingMessage extends ClientMessage {
  /** One exchange of the clock: sent at {@code t1Micros} of the client's own clock. */
  record Clock(long id, long t1Micros) implements PreparingMessage {
    public Clock {
      Check.range("id", id, 0L, Check.MAX_SAFE);
      Check.range("t1Micros", t1Micros, 0L, Check.MAX_SAFE);
    }

    @Override
    public void to(Handler handler) {
      handler.onClock(this);
    }
  }

  /**
   * How well the client knows room time.
   *
   * @param roundTripMicros the median way there and back over the exchanges kept; null where a
   *     client does not say
   * @param roundTripSpreadMicros how much that is above the shortest; null where a client does not
   *     say
   */
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record ClockReport(
      long epoch,
      ClockState state,
      long uncertaintyMicros,
      long spreadMicros,
      double skewPpm,
      @Nullable Long roundTripMicros,
      @Nullable Long roundTripSpreadMicros)
      implements PreparingMessage {
    public ClockReport {
      Check.range("epoch", epoch, 0L, Check.MAX_SAFE);
      Check.present("state", state);
      Check.range("uncertaintyMicros", uncertaintyMicros, 0L, Check.MAX_SAFE);
      Check.range("spreadMicros", spreadMicros, 0L, Check.MAX_SAFE);
      Check.range("skewPpm", skewPpm, -500.0, 500.0);
      if (roundTripMicros != null) {
        Check.range("roundTripMicros", roundTripMicros.longValue(), 0L, Check.MAX_SAFE);
      }
      if (roundTripSpreadMicros != null) {
        Check.range("roundTripSpreadMicros", roundTripSpreadMicros.longValue(), 0L, Check.MAX_SAFE);
      }
    }

    @Override
    public void to(Handler handler) {
      handler.onClockReport(this);
    }
  }

  /** How far the client's estimate of room time has come. */
  enum ClockState {
    /** Too few exchanges yet. */
    @JsonProperty("finding")
    FINDING,
    /** Fit for playing. */
    @JsonProperty("steady")
    STEADY,
    /** The estimate no longer holds. */
    @JsonProperty("lost")
    LOST
  }

  /**
   * The chair's measured delay; the client corrects its stamps by it, the server never does.
   *
   * @param taps how many it rests on, 8 to 200; 0 where an earlier check is void
   */
  record SoundCheck(InputKind input, double latencyMillis, double uncertaintyMillis, int taps)
      implements PreparingMessage {
    public SoundCheck {
      Check.present("input", input);
      Check.range("latencyMillis", latencyMillis, -350.0, 500.0);
      Check.range("uncertaintyMillis", uncertaintyMillis, 0.0, 250.0);
      Check.range("taps", taps, taps == 0 ? 0L : 8L, 200);
    }

    /** What holds where nothing was measured, or no longer holds. */
    public static SoundCheck unmeasured(InputKind input) {
      return new SoundCheck(input, 0, UNMEASURED_MILLIS, 0);
    }

    /** How far a chair's delay may be from nothing where it was not measured, milliseconds. */
    public static final double UNMEASURED_MILLIS = 60;

    @Override
    public void to(Handler handler) {
      handler.onSoundCheck(this);
    }
  }

  /** What a player plays on. */
  enum InputKind {
    /** A computer's keys. */
    @JsonProperty("keys")
    KEYS,
    /** MIDI notes. */
    @JsonProperty("midi")
    MIDI,
    /** A touch screen or mouse. */
    @JsonProperty("touch")
    TOUCH
  }

  /** A player has read the dealt part and is ready, or is not. */
  record Ready(String dealId, boolean ready) implements PreparingMessage {
    public Ready {
      Limits.id("dealId", dealId);
    }

    @Override
    public void to(Handler handler) {
      handler.onReady(this);
    }
  }
}
