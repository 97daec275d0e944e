package thinclick.server.room;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage.Role;

/** Who belongs to a room, in the order of joining, and which connection is whose. */
final class Members {
  private final Map<String, Member> byId = new LinkedHashMap<>();
  private final Map<Long, Member> byConnection = new HashMap<>();

  Collection<Member> all() {
    return byId.values();
  }

  int size() {
    return byId.size();
  }

  @Nullable Member get(String id) {
    return byId.get(id);
  }

  @Nullable Member on(long connection) {
    return byConnection.get(connection);
  }

  @Nullable Member named(Nickname name) {
    return byId.values().stream()
        .filter(m -> m.name.key().equals(name.key()))
        .findFirst()
        .orElse(null);
  }

  @Nullable Member withToken(String token) {
    return byId.values().stream()
        .filter(member -> TokenHash.matches(member.tokenHash, token))
        .findFirst()
        .orElse(null);
  }

  void add(Member member) {
    byId.put(member.id, member);
  }

  void remove(Member member) {
    byId.remove(member.id);
    disconnect(member);
  }

  void connect(Member member, long connection) {
    disconnect(member);
    member.connection = connection;
    byConnection.put(connection, member);
  }

  void disconnect(Member member) {
    if (member.connection != null) {
      byConnection.remove(member.connection);
      member.connection = null;
    }
  }

  /** The connections of all who are here, in the order of joining. */
  List<Long> connections() {
    return byId.values().stream().map(m -> m.connection).filter(Objects::nonNull).toList();
  }

  /** The same of some members. */
  List<Long> connections(Predicate<Member> which) {
    List<Long> some = new ArrayList<>(byId.size()); // for every attack: no stream here
    for (Member member : byId.values()) {
      if (member.connection != null && which.test(member)) {
        some.add(member.connection);
      }
    }
    return some;
  }

  boolean nobodyHere() {
    return byConnection.isEmpty();
  }

  int here() {
    return byConnection.size();
  }

  /** Those whose role is to play and who are here: by their chairs, then as they joined. */
  List<Member> playersHere() {
    return byId.values().stream()
        .filter(m -> m.role == Role.PLAYER && m.here())
        .sorted(Comparator.comparingInt(m -> m.chair == null ? Integer.MAX_VALUE : m.chair))
        .toList();
  }

  /** Gives a chair to one, and takes it from whoever had it. */
  void seat(Member member, int chair) {
    for (Member other : byId.values()) {
      if (other.chair != null && other.chair == chair) {
        other.chair = null;
      }
    }
    member.chair = chair;
  }

  /** A stand-in that is here and has no chair yet. */
  Optional<Member> idleStandIn() {
    return byId.values().stream()
        .filter(m -> m.standIn && m.here() && m.role == Role.PLAYER && m.chair == null)
        .findFirst();
  }
}
