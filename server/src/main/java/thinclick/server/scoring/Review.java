package thinclick.server.scoring;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Meter;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * What a take was worth: each player, each stage, the ensemble. Jackson writes it as the review
 * JSON.
 *
 * @param players in the order of the take's parts
 * @param stages in order
 * @param ensemble all together
 * @param title the drill's title
 * @param meter the meter
 * @param tempo beats a minute as written
 * @param stepsPerBeat steps a beat
 * @param toleranceMillis how far from the ensemble pulse an attack was still placed
 * @param toleranceByRule true where the take named no tolerance and the rule of the smallest gap
 *     was used
 * @param smallestGapMillis the smallest gap between two written attacks of one part, after swing;
 *     null where no part has two
 * @param responses answers against their calls as those were played, by the parts' marks
 * @param free the free spans: how each player came back, and whether the pulse held
 */
public record Review(
    List<PlayerReview> players,
    List<StageReview> stages,
    EnsembleReview ensemble,
    String title,
    Meter meter,
    double tempo,
    int stepsPerBeat,
    double toleranceMillis,
    boolean toleranceByRule,
    @Nullable Double smallestGapMillis,
    List<Response> responses,
    List<FreeReview> free) {
  public Review {
    players = List.copyOf(players);
    stages = List.copyOf(stages);
    responses = Check.listOrEmpty("responses", responses);
    free = Check.listOrEmpty("free", free);
  }

  @JsonCreator(mode = JsonCreator.Mode.DELEGATING)
  static Review fromJson(JsonNode node) {
    return Flat.read(Review.class, node);
  }

  @JsonValue
  Map<String, @Nullable Object> toJson() {
    return Flat.write(this);
  }

  /** The same review with this player's own figures only, as {@link OwnReview} cuts it. */
  public Review forPlayer(String player) {
    JsonMapper json = JsonMapper.builder().build();
    return json.treeToValue(OwnReview.of(json.valueToTree(this), player), Review.class);
  }

  /** How many bars were judged. */
  public int bars() {
    return stages.isEmpty() ? 0 : stages.get(stages.size() - 1).toBar();
  }

  /** The figures of one player, or null where nobody has the name. */
  public @Nullable PlayerReview player(String name) {
    return players.stream().filter(one -> one.player().equals(name)).findFirst().orElse(null);
  }
}
