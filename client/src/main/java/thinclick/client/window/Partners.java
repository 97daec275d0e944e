package thinclick.client.window;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.RoomLink;
import thinclick.client.partner.Drag;
import thinclick.client.partner.InTime;
import thinclick.client.sound.Voice;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Hearing.Mode;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.TakeMessage.HearsOthers;
import thinclick.protocol.message.TakeNews.Heard;
import thinclick.protocol.message.TakeNews.HeardAttack;

/**
 * Sounds what the others play: not at all, as it arrives, or in time. How it is done, and how late
 * it comes, is told to the room, which writes it into the take.
 */
final class Partners {
  private static final long AHEAD_MICROS = 250_000;
  private static final int KEPT = 64;
  private static final int FIRST_TOLD = 8;
  private static final int TOLD_EVERY = 48;

  private final Session session;
  private final SoundDesk sound;
  private final Words words;
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Mode> mode = new ReadOnlyObjectWrapper<>(Mode.NOT_AT_ALL);
  private final Map<String, String> names = new HashMap<>();
  private final Map<String, Voice> voices = new HashMap<>();
  private final Deque<Double> delays = new ArrayDeque<>();

  private String takeId = "";
  private String own = "";
  private @Nullable InTime inTime;
  private int arrivals;
  private @Nullable RoomLink toldLink;
  private @Nullable HearsOthers told;

  Partners(Session session, SoundDesk sound, Words words) {
    this.session = session;
    this.sound = sound;
    this.words = words;
    sound.hearingProperty().addListener(any -> chosen());
    session.stateProperty().addListener((any, old, now) -> follow(now));
    session.onHeard(this::heard);
    session.onPlayed(this::played);
    tell();
  }

  /** What is heard of the others and what that does to the tempo; a sentence or two. */
  ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** What holds now: what was chosen; else in time with stand-ins, not at all with people. */
  ReadOnlyObjectProperty<Mode> modeProperty() {
    return mode.getReadOnlyProperty();
  }

  private Mode mode() {
    Mode chosen = sound.hearingProperty().get();
    Mode usual = session.practising() ? Mode.IN_TIME : Mode.NOT_AT_ALL;
    mode.set(chosen != null ? chosen : usual);
    return mode.get();
  }

  private void chosen() {
    sound.shallow(mode() != Mode.NOT_AT_ALL);
    follow(session.state());
    tell();
  }

  private void follow(RoomState room) {
    RoomLink link = session.link();
    if (!room.inside() || link == null) {
      toldLink = null;
      takeId = "";
      return;
    }
    if (!link.equals(toldLink)) {
      toldLink = link;
      told = null;
      delays.clear();
      sound.shallow(mode() != Mode.NOT_AT_ALL);
      tell();
    }
    for (Person person : room.people()) {
      names.put(person.playerId(), person.name());
    }
    boolean listens = told == null ? mode() == Mode.NOT_AT_ALL : told.mode() == mode();
    if (!listens && !room.people().isEmpty()) {
      report(link);
    }
    if (room.takeRuns() && room.announced() != null) {
      begin(room, room.announced().takeId());
    } else {
      takeId = "";
      inTime = null;
    }
  }

  private void begin(RoomState room, String id) {
    Dealt dealt = room.dealt();
    Take take = room.take();
    if (id.equals(takeId) || dealt == null || take == null) {
      return;
    }
    takeId = id;
    arrivals = 0;
    own = dealt.own() == null ? "" : dealt.own();
    voices.clear();
    for (Part part : dealt.parts()) {
      voices.put(part.player(), Voice.ofRole(part.role()));
    }
    inTime = mode() == Mode.IN_TIME ? new InTime(take, own) : null;
  }

  private void played(long micros) {
    InTime now = inTime;
    if (now != null) {
      boolean unused = now.arrived(own, micros);
    }
  }

  private void heard(Heard heard) {
    RoomLink link = session.link();
    if (!heard.takeId().equals(takeId) || link == null || mode() == Mode.NOT_AT_ALL) {
      return;
    }
    long now = link.roomMicros(System.nanoTime());
    for (HeardAttack attack : heard.items()) {
      String name = names.get(attack.playerId());
      Voice voice = name == null ? null : voices.get(name);
      if (name == null || voice == null || attack.again() || attack.partOfAnother()) {
        continue;
      }
      InTime time = inTime;
      if (time == null || time.arrived(name, attack.micros())) {
        sound.strike(
            voice,
            now,
            outMicros ->
                WindowThread.INSTANCE.execute(() -> late((outMicros - attack.micros()) / 1e3)));
      }
    }
  }

  /** Another's attack came out so late, milliseconds. */
  private void late(double millis) {
    delays.addLast(Math.max(0, millis));
    if (delays.size() > KEPT) {
      delays.removeFirst();
    }
    arrivals++;
    RoomLink link = session.link();
    if (link != null && (arrivals == FIRST_TOLD || arrivals % TOLD_EVERY == 0)) {
      report(link);
    }
    tell();
  }

  /** Another's attack takes so long to the ear, milliseconds; 0 where nothing was measured. */
  private double delayMillis() {
    double[] sorted = delays.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    return sorted.length == 0 ? 0 : Math.round(sorted[sorted.length / 2] * 10) / 10.0;
  }

  private void report(RoomLink link) {
    HearsOthers now = new HearsOthers(mode(), Math.min(10_000, delayMillis()));
    if (!now.equals(told)) {
      told = now;
      link.hears(now);
    }
  }

  /** Gives out what is due in time; called often. */
  void look(long nowNanos) {
    InTime now = inTime;
    RoomLink link = session.link();
    if (now == null || link == null) {
      return;
    }
    long micros = link.roomMicros(nowNanos);
    for (InTime.Note note : now.due(micros, micros + AHEAD_MICROS)) {
      Voice voice = voices.get(note.player());
      if (voice != null) {
        sound.strike(voice, note.micros(), outMicros -> {});
      }
    }
  }

  private void tell() {
    says.set(
        switch (mode()) {
          case NOT_AT_ALL -> words.say("hearing.none.says");
          case AS_IT_ARRIVES -> arriving();
          case IN_TIME -> words.say("hearing.time.says");
        });
  }

  private String arriving() {
    if (delays.isEmpty()) {
      return words.say("hearing.arrives.unknown");
    }
    Dealt dealt = session.state().dealt();
    double beat = dealt == null ? 600 : 60_000 / dealt.tempo();
    double delay = delayMillis();
    return words.say(
        "hearing.arrives.says",
        Math.round(delay),
        Math.round(Drag.millisABeat(delay, Drag.USUAL_GAIN)),
        Math.round(Drag.percent(delay, Drag.USUAL_GAIN, beat) * 10) / 10.0);
  }
}
