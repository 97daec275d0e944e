package thinclick.house;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The table of threats in DEVELOPERS.md names tests that exist. */
class ThreatsTest {
  private static final Path ROOT = Path.of("").toAbsolutePath().getParent();
  private static final Pattern NAMED = Pattern.compile("`([A-Z]\\w*)?(?:\\.([a-z]\\w*))?`");

  private static List<String> rows() throws IOException {
    List<String> rows = new ArrayList<>();
    boolean here = false;
    for (String line : Files.readAllLines(ROOT.resolve("DEVELOPERS.md"))) {
      here = line.startsWith("## ") ? line.equals("## Threats") : here;
      if (here && line.startsWith("| ") && !line.startsWith("| who ")) {
        rows.add(line);
      }
    }
    return rows.subList(1, rows.size()); // below the rule
  }

  private static Map<String, String> tests() throws IOException {
    Map<String, String> tests = new HashMap<>();
    for (String module : List.of("protocol", "server", "client")) {
      try (Stream<Path> files = Files.walk(ROOT.resolve(module).resolve("src/test/java"))) {
        for (Path file :
            files.filter(each -> each.toString().matches(".*(Test|IT).java")).toList()) {
          String name = file.getFileName().toString().replace(".java", "");
          tests.merge(name, Files.readString(file), String::concat);
        }
      }
    }
    return tests;
  }

  @Test
  void everyTestThatARowNamesExists() throws IOException {
    Map<String, String> tests = tests();
    for (String row : rows()) {
      String[] cells = row.split(" \\| ");
      assertThat(cells).as(row).hasSize(4);
      String last = cells[3].replaceFirst(" \\|$", "");
      Matcher named = NAMED.matcher(last);
      String test = null;
      int found = 0;
      while (named.find()) {
        test = named.group(1) == null ? test : named.group(1);
        assertThat(tests).as(row).containsKey(test);
        if (named.group(2) != null) {
          assertThat(tests.get(test))
              .as("%s in %s", named.group(), row)
              .containsPattern("\\bvoid " + named.group(2) + "\\(");
        }
        found++;
      }
      assertThat(found > 0 || last.startsWith("none:"))
          .as("names a test or says none: %s", row)
          .isTrue();
    }
  }
}
