package thinclick.server.engraving;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * Texts that are kept beside the tests. After a change that is meant, {@code mvn test
 * -Dtest.jvm.flags=-Dgolden.write=true} writes them anew; read the difference before it is kept.
 */
public final class Golden {
  private Golden() {}

  public static void check(String name, String text) throws IOException {
    if (Boolean.getBoolean("golden.write")) {
      Path kept = Path.of("src/test/resources/golden", name);
      Files.createDirectories(kept.getParent());
      Files.writeString(kept, text);
      return;
    }
    try (InputStream in = Golden.class.getResourceAsStream("/golden/" + name)) {
      assertThat(in).as("the kept text %s", name).isNotNull();
      String kept = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      assertThat(text.lines()).containsExactlyElementsOf(kept.lines().toList());
    }
  }
}
