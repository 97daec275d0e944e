package thinclick.server.host;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.SeasonFile;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.server.room.Nickname;
import thinclick.server.scoring.Review;
import thinclick.server.season.ClassList;
import thinclick.server.season.Season;
import thinclick.server.store.Store;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/** A season on its way to another computer: as a file, and looked through when it comes. */
final class SeasonFiles {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private SeasonFiles() {}

  /**
   * Everything that is known of a class.
   *
   * @param list as it is kept
   * @param whole a take of it with its attacks, by its id
   */
  static SeasonFile of(
      Season season, ClassList list, List<Store.KeptTake> takes, Function<String, Take> whole) {
    List<SeasonFile.KeptTake> all = new ArrayList<>();
    for (Store.KeptTake take : takes) {
      String review = take.review();
      all.add(
          new SeasonFile.KeptTake(
              take.id(),
              take.begunAt().toString(),
              take.ended(),
              whole.apply(take.id()),
              review == null ? null : JSON.readTree(review)));
    }
    return SeasonFile.of(
        season.list().title(),
        list.keepMonths(),
        season.pupils().stream()
            .map(pupil -> new Member(pupil.name(), pupil.chair(), pupil.instrument()))
            .toList(),
        all);
  }

  /**
   * Reads one.
   *
   * @throws BadInput where it is no season, a name in it cannot be one, or a review in it does not
   *     fit its take
   */
  static SeasonFile read(byte[] file) {
    SeasonFile season = FileCodec.readSeason(file);
    for (int i = 0; i < season.members().size(); i++) {
      checkName("members[" + i + "].name", season.members().get(i).name());
    }
    for (int i = 0; i < season.takes().size(); i++) {
      checkReview("takes[" + i + "].review", season.takes().get(i));
    }
    ClassList.title("title", season.title());
    return season;
  }

  private static void checkName(String where, String name) {
    try {
      Nickname.of(name);
    } catch (BadInput bad) {
      throw new BadInput(where, bad.says());
    }
  }

  private static void checkReview(String where, SeasonFile.KeptTake take) {
    if (take.review() == null) {
      return;
    }
    Review review;
    try {
      review = JSON.treeToValue(take.review(), Review.class);
    } catch (JacksonException | IllegalArgumentException wrong) {
      throw new BadInput(where, "expected a review, found another object");
    }
    List<String> reviewed = review.players().stream().map(one -> one.player()).toList();
    List<String> played = take.take().parts().stream().map(part -> part.player()).toList();
    if (!reviewed.equals(played)) {
      throw new BadInput(where, "expected a review of the take's players, found another");
    }
  }
}
