package thinclick.client.window.stand;

import java.util.List;
import java.util.stream.Stream;
import thinclick.client.window.words.Words;
import thinclick.server.engraving.ReaderWords;
import thinclick.server.material.WrittenPart;

/**
 * What is said above the music of parts that are in view together.
 *
 * @param on what is read: instrument, form and feel of a part alone, of several what they have in
 *     common; empty where nothing is dealt
 * @param says from where, who reads it together, or whose parts they are
 */
record PartWords(String on, String says) {
  private static final PartWords NONE = new PartWords("", "");

  /** Of the one part that is read at this computer: the sentence that was dealt with it. */
  static PartWords only(StandModel reader, Words words) {
    PartWords alone = one(reader, words);
    return new PartWords(alone.on(), reader.ownSays());
  }

  /** Of one of several: beside names to choose by the sentence, too, is a few words. */
  static PartWords one(StandModel reader, Words words) {
    WrittenPart part = reader.written(words.language());
    if (part == null || reader.roomProperty().get().ownPart() == null) {
      return NONE;
    }
    return new PartWords(
        ReaderWords.withFeel(ReaderWords.of(part), part), new StandWords(words).entry(reader));
  }

  /**
   * Of several parts, each read by one or more.
   *
   * @param whose parts they are; empty where all are in view
   */
  static PartWords together(List<List<StandModel>> lines, String whose, Words words) {
    StandModel first = lines.get(0).get(0);
    if (first.written(words.language()) == null || first.roomProperty().get().ownPart() == null) {
      return NONE;
    }
    List<String> forms =
        lines.stream()
            .map(line -> line.get(0))
            .flatMap(one -> form(one, words))
            .distinct()
            .toList();
    int share = lines.size() == 1 ? lines.get(0).size() : 1;
    return new PartWords(
        forms.size() == 1 ? forms.get(0) : "",
        share > 1 && whose.isEmpty() ? words.say("stand.same", words.count(share)) : whose);
  }

  private static Stream<String> form(StandModel reader, Words words) {
    WrittenPart part = reader.written(words.language());
    return Stream.of(part == null ? "" : ReaderWords.form(part));
  }
}
