package thinclick.house;

import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import org.jspecify.annotations.NullMarked;

/**
 * The arrows that DEVELOPERS.md draws, kept. It stands in the client because the client sees all.
 */
@AnalyzeClasses(packages = "thinclick", importOptions = ImportOption.DoNotIncludeTests.class)
class BordersTest {
  private static final String[] PURE = {
    "thinclick.protocol.music..",
    "thinclick.protocol.file..",
    "thinclick.server.scoring..",
    "thinclick.server.picture..",
    "thinclick.server.history..",
    "thinclick.server.season..",
    "thinclick.server.words..",
    "thinclick.server.material..",
    "thinclick.server.dealing..",
    "thinclick.server.engraving..",
    "thinclick.server.lesson..",
    "thinclick.server.typed..",
    "thinclick.client.clock..",
    "thinclick.client.check..",
    "thinclick.client.partner..",
  };

  @ArchTest
  static void enoughClassesWereSeen(JavaClasses classes) {
    for (String module : List.of("protocol", "server", "client")) {
      long seen =
          classes.stream()
              .filter(c -> c.getPackageName().startsWith("thinclick." + module))
              .count();
      assertThat(seen).as("classes of " + module).isGreaterThan(20);
    }
  }

  @ArchTest
  static final ArchRule protocolKnowsNobody =
      noClasses()
          .that()
          .resideInAPackage("thinclick.protocol..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("thinclick.server..", "thinclick.client..", "io.netty..", "javafx..")
          .because("both sides build on it, and so might a client in a browser or on a phone");

  @ArchTest
  static final ArchRule serverKnowsNoClient =
      noClasses()
          .that()
          .resideInAPackage("thinclick.server..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("thinclick.client..", "javafx..")
          .because("a headless host must run where there is no window");

  @ArchTest
  static final ArchRule clientReachesThePureServerAndTheHostOnly =
      noClasses()
          .that()
          .resideInAPackage("thinclick.client..")
          .should()
          .dependOnClassesThat(
              resideInAnyPackage("thinclick.server..")
                  .and(
                      com.tngtech.archunit.base.DescribedPredicate.not(
                          resideInAnyPackage(
                              "thinclick.server.scoring..",
                              "thinclick.server.words..",
                              "thinclick.server.material..",
                              "thinclick.server.dealing..",
                              "thinclick.server.engraving..",
                              "thinclick.server.lesson..",
                              "thinclick.server.export..",
                              "thinclick.server.picture..",
                              "thinclick.server.history..",
                              "thinclick.server.season..",
                              "thinclick.server.typed..",
                              "thinclick.server.host.."))))
          .because("rooms, sockets and the store stay replaceable behind the one entry that hosts");

  @ArchTest
  static final ArchRule pureCodeDoesNoInputOrOutput =
      noClasses()
          .that()
          .resideInAnyPackage(PURE)
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(
              "io.netty..",
              "javafx..",
              "java.net..",
              "java.sql..",
              "java.nio.file..",
              "org.jdbi..",
              "org.slf4j..")
          .because("values in, values out: what is judged must not depend on where it runs");

  @ArchTest
  static final ArchRule nothingInTheWindowIsAnimated =
      noClasses()
          .that()
          .resideInAPackage("thinclick.client..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("javafx.animation..")
          .because("whoever asks for reduced motion gets it always: what changes, changes at once");

  @ArchTest
  static final ArchRule oneClassCrossesToTheWindowsThread =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("thinclick.client.window.WindowThread")
          .should()
          .callMethod(javafx.application.Platform.class, "runLater", Runnable.class)
          .because("where threads meet is looked for in one place");

  @ArchTest
  static final ArchRule noDialogStandsInTheWayOfATake =
      noClasses()
          .that()
          .resideInAPackage("thinclick.client..")
          .should()
          .dependOnClassesThat()
          .areAssignableTo(javafx.scene.control.Dialog.class)
          .because("what is to be said stands on the page or at its foot, and takes no key away");

  @ArchTest
  static final ArchRule modelsOfPagesKnowNoWindow =
      noClasses()
          .that()
          .resideInAPackage("thinclick.client.window..")
          .and()
          .haveSimpleNameEndingWith("Model")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("javafx.scene..", "javafx.stage..", "javafx.application..")
          .because("what a page says is tested without a display");

  @ArchTest
  static final ArchRule pureCodeReadsNoClock =
      noClasses()
          .that()
          .resideInAnyPackage(PURE)
          .should()
          .callMethod(System.class, "nanoTime")
          .orShould()
          .callMethod(System.class, "currentTimeMillis")
          .orShould()
          .callMethod(java.time.Instant.class, "now")
          .because("a clock is given, never fetched, so that a test can hold it");

  @ArchTest
  static final ArchRule roomsKnowNeitherSocketsNorSql =
      noClasses()
          .that()
          .resideInAPackage("thinclick.server.room..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("io.netty..", "java.sql..", "org.jdbi..", "thinclick.server.net..")
          .because("a recorded queue of events must replay to the same state");

  @ArchTest
  static final ArchRule onlyTheStoreSpeaksSql =
      noClasses()
          .that()
          .resideOutsideOfPackage("thinclick.server.store..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("java.sql..", "org.jdbi..", "org.flywaydb..", "org.sqlite..")
          .because("the journal may live on another machine one day");

  @ArchTest
  static final ArchRule noCircles =
      slices()
          .matching("thinclick.(*).(*)..")
          .should()
          .beFreeOfCycles()
          .because("a package that can be read alone can be changed alone");

  @ArchTest
  static final ArchRule everyPackageSaysWhoLivesThere =
      classes()
          .that()
          .haveSimpleName("package-info")
          .should()
          .beAnnotatedWith(NullMarked.class)
          .because("null is marked where it may come, and nowhere else");
}
