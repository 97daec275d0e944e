package thinclick.server.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.server.room.RoomJournal;

/**
 * A database of every schema that was ever released, each written by the host of its time: one take
 * of one player, who was cut and came back. The next one is what {@code OtherLanguageTest} leaves
 * where its folder is kept ({@code junit.jupiter.tempdir.cleanup.mode.default=NEVER}).
 */
class ReleasedSchemaTest {
  @TempDir Path folder;

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4})
  void isOpenedAndNothingInItIsLost(int schema) throws IOException {
    Path file =
        Files.copy(
            Path.of("src/test/resources/released/schema-" + schema + ".db"),
            folder.resolve("room.db"));
    try (Store store = Store.open(file, InstantSource.system(), available -> {})) {
      List<Store.TakeLine> takes = store.takes().join();
      assertThat(takes).hasSize(1);
      assertThat(takes.get(0).ended()).isEqualTo("finished");
      assertThat(store.take(takes.get(0).id()).join().orElseThrow().attacks()).hasSize(8);
      Store.SavedRoom room = store.openRooms().join().get(0);
      RoomJournal.Opened opened = store.journal().open(room.id(), room.word()).join();
      assertThat(opened.epoch()).isEqualTo(2);
      assertThat(opened.state().members()).hasSize(2);
    }
  }
}
