package thinclick.client.window.season;

import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.server.season.Season;

/** Puts those who come into a room on the chairs they sat on last, each once. */
final class LastSeats {
  private final Session session;
  private final Set<String> done = new HashSet<>();

  LastSeats(Session session) {
    this.session = session;
  }

  void forget() {
    done.clear();
  }

  /** Seats those who have no chair yet, as far as theirs is free. */
  void seat(RoomState room, Season season) {
    if (!room.inside() || !room.leader() || !room.betweenTakes() || session.practising()) {
      return;
    }
    List<Person> here =
        room.people().stream().filter(one -> one.connected() && !one.standIn()).toList();
    Set<String> taken = new HashSet<>();
    room.people().stream()
        .filter(one -> one.chair() != null)
        .forEach(one -> taken.add(one.chair()));
    Map<String, Integer> chairs = season.seats(here.stream().map(Person::name).toList());
    for (Person person : here) {
      Integer chair = chairs.get(person.name());
      if (chair != null
          && person.chair() == null
          && !taken.contains(Integer.toString(chair))
          && done.add(person.playerId())) {
        taken.add(Integer.toString(chair));
        session.lead().seat(person.playerId(), chair);
      }
    }
  }

  /** Who sits where as it was dealt, stand-ins left out: by the chair given, else by the order. */
  static Map<String, Integer> taken(RoomState room) {
    Map<String, Integer> chairs = new LinkedHashMap<>();
    Dealt dealt = room.dealt();
    if (dealt == null) {
      return chairs;
    }
    for (int i = 0; i < dealt.parts().size(); i++) {
      String name = dealt.parts().get(i).player();
      if (dealt.parts().get(i).standIn()) {
        continue;
      }
      String given =
          room.people().stream()
              .filter(one -> one.name().equals(name) && one.chair() != null)
              .map(Person::chair)
              .findFirst()
              .orElse(null);
      chairs.put(name, given == null ? i + 1 : Integer.parseInt(given));
    }
    return chairs;
  }
}
