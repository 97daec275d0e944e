package thinclick.server.host;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.AnswerMessage.DrillLine;
import thinclick.protocol.message.AnswerMessage.LibraryList;
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
          dealing.parts(),
          dealing.sentences(speaker),
          dealing.toEach(speaker),
          dealing.toleranceMillis(),
          dealing.dealt());
    };
  }

  /** The stock, and before it a folder's drills and lessons where one is given. */
  static Shelf shelf(@Nullable Path folder) {
    MaterialFolder material =
        folder == null ? MaterialFolder.stockOnly() : MaterialFolder.read(folder);
    return new FolderShelf(material);
  }

  private static final class FolderShelf implements Shelf {
    private final MaterialFolder material;
    private volatile @Nullable LibraryList list;

    FolderShelf(MaterialFolder material) {
      this.material = material;
    }

    @Override
    public Drill drill(String title) {
      return material.drill(title);
    }

    /** Made when it is first asked for: a host that starts waits for none of it. */
    @Override
    public LibraryList list() {
      LibraryList made = list;
      if (made == null) {
        made =
            new LibraryList(
                material.drills().stream()
                    .map(drill -> DrillLine.of(drill, material.own(drill.title())))
                    .toList(),
                material.lessons());
        list = made;
      }
      return made;
    }
  }
}
