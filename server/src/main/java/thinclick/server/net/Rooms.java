package thinclick.server.net;

import io.netty.channel.EventLoop;
import io.netty.channel.EventLoopGroup;
import java.net.InetAddress;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.server.room.Room;
import thinclick.server.room.RoomDirectory;
import thinclick.server.room.RoomEvent;
import thinclick.server.room.RoomJournal;
import thinclick.server.room.RoomWord;
import thinclick.server.store.Store;

/** All rooms of this host, by their words. */
final class Rooms implements RoomDirectory<HostedRoom> {
  /** The most at once. */
  static final int MOST = 200;

  private static final Logger LOG = LoggerFactory.getLogger(Rooms.class);
  private static final int ID_CHARACTERS = 13;
  private static final String ID_ALPHABET = "abcdefghijklmnopqrstuvwxyz234567";
  private static final int TOKEN_BYTES = 16;

  private final HostParts parts;
  private final EventLoopGroup loops;
  private final Busy busy;
  private final CompletableFuture<Void> drained = new CompletableFuture<>();
  private volatile boolean draining;
  private volatile boolean storeAvailable = true;
  private final SecureRandom random = new SecureRandom();
  private final Map<String, HostedRoom> byWord = new ConcurrentHashMap<>();
  private final Map<EventLoop, Flushes> flushes = new ConcurrentHashMap<>();

  Rooms(HostParts parts, EventLoopGroup loops, Busy busy) {
    this.parts = parts;
    this.loops = loops;
    this.busy = busy;
    parts.meters().rooms(this::count);
  }

  /** Brings back the rooms that were open when the host last went; one that is spoilt stays out. */
  void restore() {
    List<CompletableFuture<Void>> all = new ArrayList<>();
    for (Store.SavedRoom saved : parts.store().openRooms().join()) {
      long origin = parts.clock().nanos();
      all.add(
          parts
              .store()
              .journal()
              .open(saved.id(), saved.word())
              .thenAccept(opened -> host(restored(opened), saved.word(), loops.next(), origin))
              .exceptionally(
                  problem -> {
                    LOG.error("room {} cannot be brought back", saved.id(), problem);
                    return null;
                  }));
    }
    all.forEach(CompletableFuture::join);
    if (!all.isEmpty()) {
      LOG.atInfo().addKeyValue("rooms", count()).log("brought back");
    }
  }

  private Room restored(RoomJournal.Opened opened) {
    return Room.restored(opened, parts.shelf(), parts.dealer());
  }

  @Override
  public CompletableFuture<Place<HostedRoom>> find(String word) {
    HostedRoom here = byWord.get(word);
    return CompletableFuture.completedFuture(
        here == null ? new Place.Nowhere<>() : new Place.Here<>(here));
  }

  /** True where somebody at that address, showing that key, may make a room. */
  boolean mayBeMadeBy(InetAddress from, @Nullable String hostKey) {
    return parts.door().opensTo(from, hostKey);
  }

  /** True where no more can be made. */
  boolean full() {
    return byWord.size() >= MOST;
  }

  /** Makes a room on one of the loops, each in turn. */
  CompletableFuture<HostedRoom> make() {
    EventLoop loop = loops.next();
    String id = randomId();
    String word = unusedWord();
    long origin = parts.clock().nanos();
    return parts
        .store()
        .journal()
        .open(id, word)
        .thenApply(
            opened ->
                host(
                    Room.fresh(id, word, opened.epoch(), parts.shelf(), parts.dealer()),
                    word,
                    loop,
                    origin));
  }

  private HostedRoom host(Room room, String word, EventLoop loop, long originNanos) {
    HostedRoom hosted =
        new HostedRoom(
            room,
            loop,
            flushes.computeIfAbsent(loop, Flushes::new),
            parts,
            busy,
            originNanos,
            this::renamed,
            this::forget);
    byWord.put(word, hosted);
    if (draining) {
      hosted.leave();
    }
    parts.news().called(room.id(), word);
    LOG.atInfo().addKeyValue("room", room.id()).addKeyValue("epoch", room.epoch()).log("open");
    hosted.post(
        new RoomEvent.Woken()); // what a restored room has to say comes with its first event
    return hosted;
  }

  /** Another word for a room; the old one leads nowhere from now on. */
  private String renamed(HostedRoom room) {
    String word = unusedWord();
    byWord.put(word, room);
    byWord.entrySet().removeIf(each -> each.getValue() == room && !each.getKey().equals(word));
    parts.news().called(room.id(), word);
    return word;
  }

  private void forget(HostedRoom room) {
    byWord.values().removeIf(each -> each == room);
    parts.news().over(room.id());
    emptied();
  }

  private String unusedWord() {
    String word;
    do {
      word = RoomWord.pick(random, parts.door().syllables());
    } while (byWord.containsKey(word));
    return word;
  }

  private String randomId() {
    StringBuilder id = new StringBuilder();
    for (int i = 0; i < ID_CHARACTERS; i++) {
      id.append(ID_ALPHABET.charAt(random.nextInt(ID_ALPHABET.length())));
    }
    return id.toString();
  }

  /** A new token of 128 bits. */
  String freshToken() {
    byte[] token = new byte[TOKEN_BYTES];
    random.nextBytes(token);
    return HexFormat.of().formatHex(token);
  }

  /** Tells some of them, by their ids. */
  void tell(List<String> ids, RoomEvent event) {
    byWord.values().stream()
        .distinct()
        .filter(room -> ids.contains(room.id()))
        .forEach(room -> room.post(event));
  }

  /** Tells every room. */
  void tellAll(RoomEvent event) {
    byWord.values().forEach(room -> room.post(event));
  }

  int count() {
    return byWord.size();
  }

  /** True while a take runs in any of them; from any thread. */
  boolean anyPlays() {
    return byWord.values().stream().anyMatch(HostedRoom::playing);
  }

  /** A line is on its way to a room's loop, or has come there, or never will. */
  void moving(boolean begins) {
    if (begins) {
      busy.begin();
    } else {
      busy.end();
    }
  }

  /**
   * Takes no new rooms any more and ends those that are there, each after the take that runs in it.
   */
  void drain() {
    if (!draining) {
      LOG.atInfo()
          .addKeyValue("rooms", count())
          .log("draining: no new rooms, takes play to their end");
    }
    draining = true;
    byWord.values().forEach(HostedRoom::leave);
    emptied();
  }

  boolean draining() {
    return draining;
  }

  /** Completes once the host is draining and has no room left. */
  CompletableFuture<Void> drained() {
    return drained;
  }

  private void emptied() {
    if (draining && byWord.isEmpty()) {
      drained.complete(null);
    }
  }

  /** What {@code /health} says: {@code ok}, or why nobody should be sent here. */
  String state() {
    return draining ? "draining" : storeAvailable ? "ok" : "store unavailable";
  }

  void storeAvailable(boolean available) {
    storeAvailable = available;
    tellAll(new RoomEvent.StoreChanged(available));
  }
}
