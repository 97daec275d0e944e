package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Absent;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import tools.jackson.databind.annotation.JsonDeserialize;

/**
 * What one player is dealt for one take.
 *
 * @param player the player's name
 * @param entryStep the step at which the player comes in
 * @param uncertaintyMillis of clock and sound check together; a steady lean no bigger is not
 *     charged
 * @param attackSteps the written attacks, ascending, counted from bar 1 of the take with the entry
 *     applied
 * @param accentSteps those of the attacks that carry an accent; null where accents are not written
 * @param lengthSteps written length of each attack in steps, as many as attacks; null where not
 *     written
 * @param pitches concert MIDI note of each attack, as many as attacks; null for rhythm alone
 * @param feelMillis a lean asked for, or null
 * @param role what the chair does for the whole, or null
 * @param weight how much the player counts in the ensemble pulse, 0 to 10, default 1
 * @param instrument what the part is read on, or null
 * @param standIn true for a simulated player
 * @param away spans in which the player was not there; written attacks in them are not counted
 * @param hearing how the others were heard, or null
 * @param answers stretches that answer what another part called; empty for none
 * @param level how hard the part is at its tempo and click plan, 1 to 10; null where not said
 * @param figure where the deal gave an easier or a harder figure than the drill writes; null for
 *     what is written
 * @param free bars in which the player plays freely, ascending and apart; empty for none
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Part(
    String player,
    int entryStep,
    @JsonDeserialize(using = Absent.MeansZero.class) double uncertaintyMillis,
    List<Integer> attackSteps,
    @Nullable List<Integer> accentSteps,
    @Nullable List<Integer> lengthSteps,
    @Nullable List<Integer> pitches,
    @Nullable Feel feelMillis,
    @Nullable String role,
    @JsonProperty(defaultValue = "1") @Nullable Double weight,
    @Nullable String instrument,
    @JsonInclude(JsonInclude.Include.NON_DEFAULT) @JsonDeserialize(using = Absent.MeansFalse.class)
        boolean standIn,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Span> away,
    @Nullable Hearing hearing,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<Answer> answers,
    @Nullable Integer level,
    @Nullable DealtFigure figure,
    @JsonInclude(JsonInclude.Include.NON_EMPTY) List<FreeSpan> free) {
  public Part {
    Check.length("player", Check.present("player", player), 1, 64);
    Check.range("entryStep", entryStep, 0L, Integer.MAX_VALUE);
    Check.range("uncertaintyMillis", uncertaintyMillis, 0.0, 10_000.0);
    attackSteps = Check.list("attackSteps", attackSteps);
    Check.ascending("attackSteps", attackSteps, 0, Integer.MAX_VALUE);
    if (accentSteps != null) {
      accentSteps = Check.list("accentSteps", accentSteps);
      Check.ascending("accentSteps", accentSteps, 0, Integer.MAX_VALUE);
      Set<Integer> written = new HashSet<>(attackSteps);
      for (int i = 0; i < accentSteps.size(); i++) {
        if (!written.contains(accentSteps.get(i))) {
          throw new BadInput(
              "accentSteps[" + i + "]",
              "expected one of the attackSteps, found " + accentSteps.get(i));
        }
      }
    }
    lengthSteps = asMany("lengthSteps", lengthSteps, attackSteps.size(), 1, LONGEST_NOTE);
    pitches = asMany("pitches", pitches, attackSteps.size(), 0, 127);
    Check.range("weight", weight, 0.0, 10.0);
    away = Check.listOrEmpty("away", away);
    answers = Check.listOrEmpty("answers", answers);
    Check.range("level", level, 1, 10);
    free = Check.listOrEmpty("free", free);
    for (int i = 1; i < free.size(); i++) {
      Check.range(
          "free[" + i + "].fromBar",
          free.get(i).fromBar(),
          (long) free.get(i - 1).toBar(),
          Take.MAX_STEPS);
    }
  }

  /** A part that answers nobody and has no free bars. */
  public Part(
      String player,
      int entryStep,
      double uncertaintyMillis,
      List<Integer> attackSteps,
      @Nullable List<Integer> accentSteps,
      @Nullable List<Integer> lengthSteps,
      @Nullable List<Integer> pitches,
      @Nullable Feel feelMillis,
      @Nullable String role,
      @Nullable Double weight,
      @Nullable String instrument,
      boolean standIn,
      List<Span> away,
      @Nullable Hearing hearing) {
    this(
        player,
        entryStep,
        uncertaintyMillis,
        attackSteps,
        accentSteps,
        lengthSteps,
        pitches,
        feelMillis,
        role,
        weight,
        instrument,
        standIn,
        away,
        hearing,
        List.of(),
        null,
        null,
        List.of());
  }

  private static final int LONGEST_NOTE = 100_000;

  private static @Nullable List<Integer> asMany(
      String field, @Nullable List<Integer> values, int attacks, int min, int max) {
    if (values == null) {
      return null;
    }
    List<Integer> given = Check.list(field, values);
    if (given.size() != attacks) {
      throw new BadInput(
          field, "expected as many as attackSteps, " + attacks + ", found " + given.size());
    }
    Check.eachInRange(field, given, min, max);
    return given;
  }

  /** A part of attacks alone, without accents, pitches or anything else. */
  public static Part of(String player, int entryStep, List<Integer> attackSteps) {
    return new Part(
        player,
        entryStep,
        0,
        attackSteps,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        false,
        List.of(),
        null);
  }

  /** The same part, to be changed field by field. */
  public PartEdit edited() {
    return new PartEdit(this);
  }

  /** The same part, what happened included, under another name. */
  public Part renamed(String other) {
    return edited().player(other).part();
  }

  /** What is written here for another player; nothing of what happened to this one. */
  public Part writtenFor(String other) {
    return edited().player(other).standIn(false).away(List.of()).hearing(null).part();
  }

  /** True where a bar of the take, from 0, is played freely. */
  public boolean freeAt(int bar) {
    return free.stream().anyMatch(span -> span.covers(bar));
  }

  /** The weight in the ensemble pulse, 1 where none is written. */
  public double pulseWeight() {
    return weight == null ? 1 : weight;
  }

  /** The lean asked for, none where none is written. */
  public Feel feel() {
    return feelMillis == null ? Feel.NONE : feelMillis;
  }
}
