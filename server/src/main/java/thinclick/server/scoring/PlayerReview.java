package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Feel;
import tools.jackson.databind.JsonNode;

/**
 * One player's figures.
 *
 * @param player the name
 * @param written written attacks that count: not those while away or after the take was stopped
 * @param placed written attacks played within tolerance of the ensemble pulse, undisplaced
 * @param dropped written attacks nobody played
 * @param added attacks played that nobody wrote
 * @param leanMillis mean asynchrony after feel, negative early, over attacks matched undisplaced
 * @param spreadMillis standard deviation of asynchrony over the same
 * @param onbeat the figures on the beats
 * @param offbeat the figures off the beats
 * @param offbeatMinusOnbeatMillis mean asynchrony off the beats less that on them, from one fit of
 *     both; positive where offbeats come later
 * @param displacements runs of bars played off by whole steps, in order
 * @param hold placed of written, percent
 * @param chargedLeanMillis what of the lean exceeds the chair's uncertainty
 * @param uncertaintyMillis the chair's uncertainty, clock, sound check and late stamps together
 * @param swingRatio long to short of this player's own pairs
 * @param timekeeperMillis standard deviation of the timekeeper for one beat
 * @param motorMillis standard deviation of one attack's execution
 * @param accents probability that a written accent is louder than an unaccented attack
 * @param noteLength median of sounded over written length
 * @param stages the player by stage
 * @param displaced written attacks played at a displaced place
 * @param away written attacks while away, counted nowhere
 * @param setAside attacks that belong to another: later notes of a chord, double triggers
 * @param shiftPeriodSteps the part repeats itself after so many steps, so that a shift by them
 *     cannot be seen; null where it does not repeat
 * @param feelMillis the lean asked for, already subtracted; null where none was
 * @param role what the chair does for the whole, or null
 * @param standIn true for a simulated player
 */
public record PlayerReview(
    String player,
    int written,
    int placed,
    int dropped,
    int added,
    Figure leanMillis,
    Figure spreadMillis,
    PositionReview onbeat,
    PositionReview offbeat,
    Figure offbeatMinusOnbeatMillis,
    List<Displacement> displacements,
    Figure hold,
    @Nullable Double chargedLeanMillis,
    double uncertaintyMillis,
    Figure swingRatio,
    Figure timekeeperMillis,
    Figure motorMillis,
    Figure clickGain,
    Figure tendencyMillis,
    List<ForecastReview> forecasts,
    Figure accents,
    Figure noteLength,
    List<PlayerStage> stages,
    int displaced,
    int away,
    int setAside,
    @Nullable Integer shiftPeriodSteps,
    @Nullable Feel feelMillis,
    @Nullable String role,
    boolean standIn) {
  public PlayerReview {
    forecasts = forecasts == null ? List.of() : List.copyOf(forecasts);
    displacements = List.copyOf(displacements);
    stages = List.copyOf(stages);
  }

  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static PlayerReview fromJson(JsonNode node) {
    return Flat.read(PlayerReview.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }
}
