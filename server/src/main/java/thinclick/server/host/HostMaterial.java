package thinclick.server.host;

import thinclick.protocol.file.Take;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.material.Stock;
import thinclick.server.room.DealMaker;
import thinclick.server.room.Drills;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;
import tools.jackson.databind.JsonNode;

/** What rooms deal from and are judged by: the stock, the dealer, the score. */
final class HostMaterial {
  static final Drills STOCK = Stock::find;

  static final DealMaker DEALER =
      (drill, players, seed, tempo, stages) -> {
        Dealing dealing = Dealer.deal(drill, players, seed, tempo, stages);
        return new DealMaker.Hand(
            dealing.parts(), dealing.sentences(), dealing.toleranceMillis(), dealing.dealt());
      };

  private HostMaterial() {}

  static JsonNode review(Take take) {
    return Spoken.of(Scorer.analyse(take), Speaker.english()).toJson();
  }
}
