package thinclick.client.window;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javafx.collections.FXCollections;
import javafx.collections.ListChangeListener;
import javafx.collections.ObservableList;
import thinclick.client.check.Verdict;
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;

/** The chairs at this computer: the player's whose window it is, and up to three more. */
final class Chairs {
  private final ObservableList<Chair> all = FXCollections.observableArrayList();
  private final ObservableList<Chair> seen = FXCollections.unmodifiableObservableList(all);
  private final Map<String, Chair> owners = new HashMap<>();

  Chairs(Session session, SoundDesk sound, Words words) {
    all.add(new Chair(session, sound, words));
    session
        .further()
        .addListener(
            (ListChangeListener<FurtherSeat>)
                any -> {
                  List<FurtherSeat> seats = session.further();
                  List<Chair> left =
                      all.stream().skip(1).filter(one -> !seats.contains(one.further())).toList();
                  left.forEach(Chair::close);
                  owners.values().removeAll(left);
                  all.removeAll(left);
                  seats.stream()
                      .filter(seat -> all.stream().noneMatch(one -> one.seat() == seat))
                      .forEach(seat -> all.add(new Chair(seat, sound, words)));
                });
  }

  /** In the order in which they came, the window's own first. */
  ObservableList<Chair> all() {
    return seen;
  }

  Chair first() {
    return all.get(0);
  }

  /** The chair of this number, the first where there is none. */
  Chair get(int chair) {
    return chair < all.size() ? all.get(chair) : first();
  }

  /** An input of a chair's, by its name, is tapped on for the check. */
  void checks(ChairInput input, Chair chair) {
    owners.put(input.name(), chair);
  }

  /** A check was judged: it was about the chair that tapped. */
  void judged(String input, Verdict verdict) {
    owners.getOrDefault(input, first()).delay().judged(input, verdict);
  }

  /** Looks at the clock. */
  void look() {
    all.forEach(chair -> chair.stand().look());
  }
}
