package thinclick.server.export;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Area;
import java.awt.geom.Rectangle2D;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.stream.IntStream;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Glyph;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Place;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The measures that layout uses against the fonts that are shipped and Bravura's own metadata. */
class ShippedFontsTest {
  /** An excerpt of the metadata of Bravura 1.392, from npm @vexflow-fonts/bravura 1.0.2. */
  private static final JsonNode METADATA = metadata();

  @ParameterizedTest
  @EnumSource(Glyph.class)
  void signCoversWhatTheFontDraws(Glyph glyph) throws Exception {
    Rectangle2D drawn = new Area(GlyphOutlines.shipped().of(glyph)).getBounds2D();
    var box = new Mark.Sign(Place.NOWHERE, Ink.FULL, glyph, 0, 0, 1).box();
    assertThat(box.left()).isCloseTo(drawn.getMinX() / 250, within(.03));
    assertThat(box.right()).isCloseTo(drawn.getMaxX() / 250, within(.03));
    assertThat(box.top()).isCloseTo(-drawn.getMaxY() / 250, within(.03));
    assertThat(box.bottom()).isCloseTo(-drawn.getMinY() / 250, within(.03));
  }

  @ParameterizedTest
  @EnumSource(Glyph.class)
  void signHasTheMeasuresOfTheMetadata(Glyph glyph) {
    JsonNode said = null;
    for (JsonNode node : METADATA.get("glyphs")) {
      if (node.get("codepoint").asString().equals("U+%04X".formatted(glyph.codePoint()))) {
        said = node;
      }
    }
    assertThat(said).as("%s in the metadata", glyph).isNotNull();
    var box = new Mark.Sign(Place.NOWHERE, Ink.FULL, glyph, 0, 0, 1).box();
    assertThat(glyph.advance()).isCloseTo(said.get("advance").asDouble(), within(.001));
    assertThat(box.left()).isCloseTo(said.get("bBoxSW").get(0).asDouble(), within(.001));
    assertThat(-box.bottom()).isCloseTo(said.get("bBoxSW").get(1).asDouble(), within(.001));
    assertThat(box.right()).isCloseTo(said.get("bBoxNE").get(0).asDouble(), within(.001));
    assertThat(-box.top()).isCloseTo(said.get("bBoxNE").get(1).asDouble(), within(.001));
  }

  @ParameterizedTest
  @EnumSource(Face.class)
  void textIsAsWideAsTheFontSays(Face face) throws Exception {
    try (TrueTypeFont font = GlyphOutlines.open(face)) {
      var lookup = font.getUnicodeCmapLookup();
      int[] printed =
          "\u2013\u2014\u2018\u2019\u201a\u201c\u201d\u201e\u2026\u2212".chars().toArray();
      for (int point :
          IntStream.concat(IntStream.rangeClosed(0x20, 0x17F), IntStream.of(printed)).toArray()) {
        int id = lookup.getGlyphId(point);
        if (id != 0 && (point < 0x7F || point >= 0xA0)) {
          double said = font.getAdvanceWidth(id) * 1000.0 / font.getUnitsPerEm();
          assertThat(face.width(Character.toString(point), 1000))
              .as("%s U+%04X", face, point)
              .isCloseTo(said, within(.51));
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"Bravura-OFL.txt", "SourceSerif4-OFL.txt"})
  void licenceStandsBesideTheFont(String file) throws Exception {
    try (InputStream in = Face.class.getResourceAsStream(file)) {
      String licence = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      assertThat(licence)
          .contains("SIL OPEN FONT LICENSE Version 1.1")
          .contains("with Reserved Font Name");
    }
  }

  private static JsonNode metadata() {
    try (InputStream in =
        ShippedFontsTest.class.getResourceAsStream("/fixtures/bravura_1.392_metadata.json")) {
      return new JsonMapper().readTree(in);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
