package thinclick.server.season;

import java.time.ZoneId;
import java.util.List;
import thinclick.server.history.CourseSheet;
import thinclick.server.history.HistoryJson;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.words.Speaker;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/** A season for programs. Days are ISO 8601 in the zone that was asked for, instants in UTC. */
public final class SeasonJson {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();

  private SeasonJson() {}

  /** The season: its weeks, each in it with level, rung and forecasts, its courses. */
  public static ObjectNode of(Season season, ZoneId zone) {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("class", season.list().title());
    json.put("keepMonths", season.list().keepMonths());
    json.put("zone", zone.getId());
    List<Pupil> pupils = season.pupils();
    List<Week> weeks = season.weeks(zone);
    ArrayNode list = json.putArray("weeks");
    for (Week week : weeks) {
      ObjectNode one = list.addObject();
      one.put("monday", week.monday().toString()).put("takes", week.takes().size());
      ArrayNode present = one.putArray("present");
      pupils.stream()
          .filter(pupil -> week.takesOf(pupil.key()) > 0)
          .forEach(pupil -> present.add(pupil.name()));
    }
    ArrayNode members = json.putArray("members");
    pupils.forEach(pupil -> members.add(member(pupil)));
    json.set(
        "courses", HistoryJson.of(CourseSheet.of(season.courses(), null), null).get("courses"));
    return json;
  }

  private static ObjectNode member(Pupil pupil) {
    ObjectNode json = MAPPER.createObjectNode();
    json.put("name", pupil.name()).put("chair", pupil.chair());
    json.put("instrument", pupil.instrument()).put("takes", pupil.takes().size());
    json.put("lastSeen", pupil.lastSeen() == null ? null : pupil.lastSeen().toString());
    Standing standing = pupil.standing().orElse(null);
    json.put("level", standing == null ? null : (Integer) standing.level());
    if (standing != null) {
      json.putObject("levelFrom")
          .put("level", standing.played())
          .put("hold", Math.round(100 * standing.holdPercent()) / 100.0)
          .put("takes", standing.takes());
    }
    OwnRung rung = pupil.rung().orElse(null);
    if (rung == null) {
      json.putNull("fewestClicks");
    } else {
      json.putObject("fewestClicks")
          .put("click", Speaker.english().say(rung.click()))
          .put("clicksPerBar", rung.clicksPerBar())
          .put("hold", rung.holdPercent())
          .put("begunAt", rung.begunAt().toString());
    }
    PlayerReview newest =
        pupil.takes().isEmpty() ? null : pupil.review(pupil.takes().get(pupil.takes().size() - 1));
    json.set("forecasts", MAPPER.valueToTree(newest == null ? List.of() : newest.forecasts()));
    return json;
  }
}
