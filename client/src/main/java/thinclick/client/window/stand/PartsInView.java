package thinclick.client.window.stand;

import java.util.List;
import java.util.stream.Stream;
import javafx.beans.value.ChangeListener;
import javafx.geometry.Insets;
import javafx.scene.layout.BorderPane;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.stand.StandView.Reader;
import thinclick.client.window.words.Words;
import thinclick.server.material.WrittenPart;

/**
 * The parts in view of those who read at this computer: all below each other where they fit, page
 * by page or one alone; kept up to date in their place.
 */
final class PartsInView {
  private final BorderPane place;
  private final Words words;
  private final Runnable changed;
  private final FittedPages fitted = new FittedPages();
  private final ReaderPages pages = new ReaderPages(fitted);
  private final ChangeListener<RoomState> onRoom = (any, old, now) -> fit();
  private final ChangeListener<Leaf> onLeaf = (any, old, now) -> tell();

  private Palette palette = Palette.LIGHT;
  private double scale = 1;
  private List<Reader> readers = List.of();
  private List<List<Integer>> shown = List.of();
  private @Nullable PartSheet part;

  /**
   * @param place of the score
   * @param changed is told when other parts are in view, or the same in another way
   */
  PartsInView(BorderPane place, Words words, Runnable changed) {
    this.place = place;
    this.words = words;
    this.changed = changed;
    place.heightProperty().addListener(any -> fit());
    place.widthProperty().addListener(any -> fit());
  }

  /** Those who read from now on; their parts come into view. */
  void readers(List<Reader> now) {
    readers.forEach(reader -> reader.model().roomProperty().removeListener(onRoom));
    readers = List.copyOf(now);
    readers.forEach(reader -> reader.model().roomProperty().addListener(onRoom));
    pages.readers(readers.size());
    shown = List.of();
    fit();
  }

  /** What is in view; null before anybody reads. */
  @Nullable PartSheet part() {
    return part;
  }

  /** Whose part is chosen, or {@link ReaderPages#ALL}. */
  int chosen() {
    return pages.chosen();
  }

  /** Whether one reader's part fills the page. */
  boolean alone() {
    return pages.alone();
  }

  /** What is said above the music of what is in view. */
  PartWords words() {
    if (readers.size() == 1) {
      return PartWords.only(readers.get(0).model(), words);
    }
    return pages.alone() ? PartWords.one(models(shown).get(0).get(0), words) : together(shown);
  }

  /** What is said of all that can be turned to; nothing where one reads alone. */
  List<PartWords> inTurn() {
    return readers.size() == 1
        ? List.of()
        : Stream.concat(
                pages.together().stream().map(this::together),
                readers.stream().map(reader -> PartWords.one(reader.model(), words)))
            .toList();
  }

  private PartWords together(List<List<Integer>> page) {
    return PartWords.together(models(page), pages.several() ? whose(page) : "", words);
  }

  private List<List<StandModel>> models(List<List<Integer>> page) {
    return page.stream()
        .map(line -> line.stream().map(one -> readers.get(one).model()).toList())
        .toList();
  }

  /** Whose parts are in view and how the others come into it; empty where all are. */
  String whose() {
    return pages.several() && !pages.alone() ? whose(shown) : "";
  }

  private String whose(List<List<Integer>> page) {
    List<Integer> here = page.stream().flatMap(List::stream).toList();
    return words.say("stand.shown", names(here), names(pages.elsewhere(page)));
  }

  void choose(int reader) {
    pages.choose(reader);
    arrange();
  }

  /** Turns to the parts that are not in view; where all are, to the next reader's alone. */
  void turn(int by) {
    pages.turn(by);
    arrange();
  }

  /** Paints again in other colours or another size. */
  void dress(Palette wanted, double textScale) {
    palette = wanted;
    scale = textScale;
    if (part != null) {
      part.dress(wanted, textScale);
    }
    fit();
  }

  /** Looks whether the parts still fit as they stand. */
  private void fit() {
    if (readers.size() > 1) {
      Insets around = place.getInsets();
      pages.fit(
          dealt(),
          place.getWidth() - around.getLeft() - around.getRight(),
          place.getHeight() - around.getTop() - around.getBottom(),
          scale);
    }
    arrange();
  }

  private void arrange() {
    PartSheet now = part == null || !shown.equals(pages.shown()) ? turned() : part;
    now.beside(beside(pages.others()), beside(pages.score()));
    tell();
  }

  private PartSheet turned() {
    shown = pages.shown();
    if (part != null) {
      part.leafProperty().removeListener(onLeaf);
      part.close();
    }
    PartSheet made =
        new PartSheet(
            shown.stream().map(line -> line.stream().map(readers::get).toList()).toList(),
            pages.alone(),
            readers.stream().map(Reader::model).toList(),
            fitted,
            words);
    made.dress(palette, scale);
    made.leafProperty().addListener(onLeaf);
    made.onWritten(this::tell);
    part = made;
    place.setCenter(made.root());
    return made;
  }

  private void tell() {
    changed.run();
  }

  private List<@Nullable WrittenPart> dealt() {
    return readers.stream()
        .<@Nullable WrittenPart>map(reader -> reader.model().written(words.language()))
        .toList();
  }

  private List<Beside> beside(List<List<List<Integer>>> others) {
    List<@Nullable WrittenPart> dealt = others.isEmpty() ? List.of() : dealt();
    return others.stream().map(page -> Beside.of(page, dealt)).toList();
  }

  private String names(List<Integer> who) {
    return words.list(who.stream().map(one -> readers.get(one).name()).toList());
  }
}
