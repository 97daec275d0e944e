package thinclick.server.host;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Lesson;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.folder.MaterialFolder;
import thinclick.server.room.DealMaker;
import thinclick.server.room.Shelf;
import thinclick.server.words.Speaker;

/** What rooms deal from and are judged by: the stock and a folder, the dealer, the score. */
final class HostMaterial {
  private HostMaterial() {}

  /** Deals, and says who comes in where in a language. */
  static DealMaker dealer(Speaker speaker) {
    return (drill, players, seed, tempo, stages, levels) -> {
      Dealing dealing = Dealer.dealFitted(drill, players, seed, tempo, stages, levels);
      return new DealMaker.Hand(
          dealing.parts(), dealing.sentences(speaker), dealing.toleranceMillis(), dealing.dealt());
    };
  }

  /** The stock, and before it a folder's drills and lessons where one is given. */
  static Shelf shelf(@Nullable Path folder) {
    MaterialFolder material =
        folder == null ? MaterialFolder.stockOnly() : MaterialFolder.read(folder);
    return new Shelf() {
      @Override
      public Drill drill(String title) {
        return material.drill(title);
      }

      @Override
      public List<Drill> drills() {
        return material.drills();
      }

      @Override
      public boolean own(Drill drill) {
        return material.own(drill.title());
      }

      @Override
      public List<Lesson> lessons() {
        return material.lessons();
      }
    };
  }
}
