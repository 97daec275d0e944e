package thinclick.server.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import org.flywaydb.core.api.ResourceProvider;
import org.flywaydb.core.api.resource.LoadableResource;
import org.jspecify.annotations.Nullable;

/**
 * The released schemas, by their files. Flyway would find them by itself, and would read through
 * the whole jar for it at every start.
 */
final class Migrations implements ResourceProvider {
  /** In the folder {@code migration}; a released one is never changed. */
  static final List<String> FILES =
      List.of(
          "V1__rooms_takes_attacks.sql",
          "V2__classes.sql",
          "V3__attacks_lie_as_they_come.sql",
          "V4__dropped_takes.sql");

  @Override
  public @Nullable LoadableResource getResource(String name) {
    return FILES.contains(name) ? new Script(name) : null;
  }

  @Override
  public Collection<LoadableResource> getResources(String prefix, String[] suffixes) {
    return FILES.stream()
        .filter(file -> file.startsWith(prefix) && Arrays.stream(suffixes).anyMatch(file::endsWith))
        .<LoadableResource>map(Script::new)
        .toList();
  }

  private static final class Script extends LoadableResource {
    private final String name;

    Script(String name) {
      this.name = name;
    }

    @Override
    public Reader read() {
      try (InputStream file =
          Objects.requireNonNull(Migrations.class.getResourceAsStream("migration/" + name))) {
        return new StringReader(new String(file.readAllBytes(), StandardCharsets.UTF_8));
      } catch (IOException broken) {
        throw new UncheckedIOException(broken);
      }
    }

    @Override
    public String getAbsolutePath() {
      return "migration/" + name;
    }

    @Override
    public String getAbsolutePathOnDisk() {
      return getAbsolutePath();
    }

    @Override
    public String getFilename() {
      return name;
    }

    @Override
    public String getRelativePath() {
      return name;
    }
  }
}
