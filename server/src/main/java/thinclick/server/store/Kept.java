package thinclick.server.store;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.SeasonFile.Member;
import thinclick.server.season.ClassList;
import thinclick.server.season.NameKey;

/**
 * What a host's database keeps, by which its copies are gone through: a copy may be of a time when
 * a take was in no class yet, or a class was kept for longer or shorter.
 *
 * @param takes their ids
 * @param dropped ids of those that somebody dropped and that are not here again
 * @param months how long each class is kept, by its key; null as the host keeps everything else
 * @param members keys of those in the list of each class, by its key
 */
record Kept(
    Set<String> takes,
    Set<String> dropped,
    Map<String, @Nullable Integer> months,
    Map<String, Set<String>> members) {
  /** Of a database that goes by itself alone. */
  static final Kept BY_ITSELF = new Kept(Set.of(), Set.of(), Map.of(), Map.of());

  static Kept of(Handle handle) {
    Map<String, @Nullable Integer> months = new HashMap<>();
    Map<String, Set<String>> members = new HashMap<>();
    for (ClassStore.KeptClass one : ClassRows.all(handle)) {
      String key = ClassList.key(one.list().title());
      months.put(key, one.list().keepMonths());
      members.put(
          key,
          one.list().members().stream()
              .map(Member::name)
              .map(NameKey::of)
              .collect(Collectors.toSet()));
    }
    return new Kept(
        ids(handle, "SELECT id FROM take"),
        ids(handle, "SELECT id FROM dropped_take WHERE id NOT IN (SELECT id FROM take)"),
        months,
        members);
  }

  private static Set<String> ids(Handle handle, String query) {
    return new HashSet<>(handle.createQuery(query).mapTo(String.class).list());
  }

  /** How long a class is kept: as the host's database says, else as the copy does. */
  @Nullable Integer months(ClassList copied) {
    String key = ClassList.key(copied.title());
    return months.containsKey(key) ? months.get(key) : copied.keepMonths();
  }

  boolean has(ClassList copied) {
    return months.containsKey(ClassList.key(copied.title()));
  }

  boolean has(ClassList copied, String member) {
    return members
        .getOrDefault(ClassList.key(copied.title()), Set.of())
        .contains(NameKey.of(member));
  }
}
