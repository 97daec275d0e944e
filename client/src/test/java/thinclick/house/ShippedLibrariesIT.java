package thinclick.house;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What the jar of the window holds, against the bill of materials that is shipped in it. */
class ShippedLibrariesIT {
  private static final Path JAR = Path.of("target", "thinclick.jar").toAbsolutePath();

  /** Asked for by one of the libraries, but seen by the compiler alone. */
  private static final String ANNOTATIONS = "error_prone_annotations";

  private static final String BILL = "META-INF/sbom/bom.json";

  private record Library(String group, String name, String version, boolean licensed) {
    boolean is(Properties made) {
      return group.equals(made.getProperty("groupId"))
          && name.equals(made.getProperty("artifactId"))
          && version.equals(made.getProperty("version"));
    }

    /** True where its makers have put that into their own jar, as part of it. */
    boolean holds(String path) {
      return entries().contains(path);
    }

    /** Some class of it; null where it does not lie in the local repository. */
    String aClass() {
      return entries().stream()
          .filter(path -> path.endsWith(".class") && !path.endsWith("module-info.class"))
          .findFirst()
          .orElse(null);
    }

    private List<String> entries() {
      Path home = Path.of(System.getProperty("user.home"), ".m2", "repository");
      Path file =
          Path.of(System.getProperty("maven.repo.local", home.toString()))
              .resolve(Path.of(group.replace('.', '/'), name, version))
              .resolve(name + "-" + version + ".jar");
      if (!Files.exists(file)) {
        return List.of();
      }
      try (JarFile jar = new JarFile(file.toFile())) {
        return jar.stream().map(JarEntry::getName).toList();
      } catch (IOException problem) {
        throw new UncheckedIOException(problem);
      }
    }
  }

  private static List<Library> bill(JarFile jar) throws IOException {
    JarEntry entry = jar.getJarEntry(BILL);
    assumeThat(entry).as("a bill: none is made where Maven is offline").isNotNull();
    List<Library> libraries = new ArrayList<>();
    try (InputStream in = jar.getInputStream(entry)) {
      for (JsonNode each : new JsonMapper().readTree(in).path("components")) {
        libraries.add(
            new Library(
                each.path("group").asString(),
                each.path("name").asString(),
                each.path("version").asString(),
                !each.path("licenses").isEmpty()));
      }
    }
    return libraries;
  }

  @Test
  void billNamesEveryLibraryInTheJarAndNothingElse() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      List<Library> bill = bill(jar);
      assertThat(bill).hasSizeGreaterThan(30).allMatch(Library::licensed, "has a licence");
      for (JarEntry entry : jar.stream().toList()) {
        if (entry.getName().matches("META-INF/maven/.*/pom\\.properties")) {
          Properties made = new Properties();
          try (InputStream in = jar.getInputStream(entry)) {
            made.load(in);
          }
          assertThat(bill)
              .as("in the jar: %s", entry)
              .anyMatch(each -> each.is(made) || each.holds(entry.getName()));
        }
      }
      for (Library each : bill) {
        String aClass = each.aClass();
        if (aClass != null && !each.name().equals(ANNOTATIONS)) {
          assertThat(jar.getEntry(aClass)).as("in the bill: %s", each).isNotNull();
        }
      }
    }
  }

  @Test
  void licencesAndNoticesOfOthersArePassedOn() throws IOException {
    try (JarFile jar = new JarFile(JAR.toFile())) {
      assertThat(text(jar, "LICENSE")).contains("Apache License");
      assertThat(text(jar, "META-INF/NOTICE"))
          .contains("Thinclick, under the Apache License 2.0")
          .contains("Micrometer", "The Netty Project", "Jackson")
          .doesNotContain("Copyright 2006-2026 The Apache");
      assertThat(text(jar, "META-INF/LICENSE.txt"))
          .as("of the logging interface")
          .contains("QOS.ch");
    }
  }

  private static String text(JarFile jar, String name) throws IOException {
    JarEntry entry = jar.getJarEntry(name);
    assertThat(entry).as(name).isNotNull();
    try (InputStream in = jar.getInputStream(entry)) {
      return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
    }
  }
}
