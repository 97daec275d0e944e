package thinclick.server.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class MigrationsTest {
  @Test
  void everyFileOfTheFolderIsListed() throws IOException, URISyntaxException {
    URL one =
        Objects.requireNonNull(
            Migrations.class.getResource("migration/" + Migrations.FILES.get(0)));

    try (Stream<Path> files = Files.list(Path.of(one.toURI()).getParent())) {
      assertThat(files.map(file -> file.getFileName().toString()))
          .containsExactlyInAnyOrderElementsOf(Migrations.FILES);
    }
  }
}
