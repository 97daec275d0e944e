package thinclick.client.input;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.Future;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.MidiMessage;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.MidiUnavailableException;
import javax.sound.midi.Receiver;
import javax.sound.midi.Sequencer;
import javax.sound.midi.Synthesizer;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.link.PlayedAttack;
import thinclick.protocol.time.Daemon;

/**
 * Every MIDI input of the computer, opened as it is plugged in and let go as it is pulled out;
 * looked for every two seconds on a thread of its own.
 */
public final class MidiInputs implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(MidiInputs.class);
  private static final long LOOK_SECONDS = 2;

  private final MidiEar ear;
  private final Map<String, MidiDevice> open = new LinkedHashMap<>();
  private final Set<String> noInputs = new HashSet<>();
  private final ScheduledExecutorService looking;
  private @Nullable Future<?> looks;
  private final AtomicReference<@Nullable PadLearner> learner = new AtomicReference<>();
  private volatile Map<String, NoteFilter> filters = Map.of();

  public MidiInputs(MidiEar ear) {
    this.ear = ear;
    this.looking = new ScheduledThreadPoolExecutor(1, Daemon.called("midi"));
  }

  /** Begins to look. */
  public void start() {
    looks = looking.scheduleWithFixedDelay(this::lookSafely, 0, LOOK_SECONDS, TimeUnit.SECONDS);
  }

  /** What counts as an attack from now on, by the name of the input; the usual on all others. */
  public void filters(Map<String, NoteFilter> wanted) {
    filters = Map.copyOf(wanted);
  }

  /** From the next few strokes on an input what counts on it is learned from them. */
  public void learn() {
    learner.set(new PadLearner());
  }

  private void learn(String input, int status, int velocity) {
    PadLearner learning = learner.get();
    if (learning == null) {
      return;
    }
    NoteFilter found;
    synchronized (learning) { // each device has a thread of its own
      found = learning.heard(input, status, velocity);
    }
    if (found != null && learner.compareAndSet(learning, null)) {
      Map<String, NoteFilter> next = new HashMap<>(filters);
      next.put(input, found);
      filters(next);
      ear.learned(input, found);
    }
  }

  private void lookSafely() {
    try {
      look();
    } catch (RuntimeException problem) {
      LOG.warn("MIDI inputs cannot be listed: {}", problem.toString());
    }
  }

  private void look() {
    Map<String, MidiDevice.Info> present = new LinkedHashMap<>();
    for (MidiDevice.Info info : MidiSystem.getMidiDeviceInfo()) {
      String key = info.getName() + '\n' + info.getVendor() + '\n' + info.getDescription();
      while (present.containsKey(key)) {
        key += '\n';
      }
      present.put(key, info);
    }
    noInputs.retainAll(present.keySet());
    boolean changed = false;
    for (Map.Entry<String, MidiDevice> one : List.copyOf(open.entrySet())) {
      if (!present.containsKey(one.getKey())) {
        open.remove(one.getKey());
        close(one.getValue());
        changed = true;
      }
    }
    for (Map.Entry<String, MidiDevice.Info> one : present.entrySet()) {
      if (!open.containsKey(one.getKey()) && !noInputs.contains(one.getKey())) {
        changed |= tryOpen(one.getKey(), one.getValue());
      }
    }
    if (changed) {
      List<String> names = new ArrayList<>();
      open.values().forEach(device -> names.add(device.getDeviceInfo().getName()));
      ear.inputsChanged(List.copyOf(names));
    }
  }

  private boolean tryOpen(String key, MidiDevice.Info info) {
    try {
      MidiDevice device = MidiSystem.getMidiDevice(info);
      boolean software = device instanceof Sequencer || device instanceof Synthesizer;
      if (software || device.getMaxTransmitters() == 0) {
        noInputs.add(key);
        return false;
      }
      device.open();
      device.getTransmitter().setReceiver(new Ear(info.getName()));
      open.put(key, device);
      LOG.info("MIDI input \"{}\"", info.getName());
      return true;
    } catch (MidiUnavailableException | IllegalArgumentException taken) {
      LOG.debug("MIDI input \"{}\" cannot be opened: {}", info.getName(), taken.getMessage());
      return false;
    }
  }

  private static void close(MidiDevice device) {
    LOG.info("MIDI input \"{}\" is gone", device.getDeviceInfo().getName());
    device.close();
  }

  @Override
  public void close() {
    if (looks != null) {
      looks.cancel(false);
    }
    looking.execute(
        () -> {
          open.values().forEach(MidiDevice::close);
          open.clear();
        });
    looking.shutdown();
  }

  /** One device's messages. */
  private final class Ear implements Receiver {
    private final String name;
    private final StampMapper stamps = new StampMapper();
    private final HeldNotes held = new HeldNotes();

    Ear(String name) {
      this.name = name;
    }

    @Override
    public void send(MidiMessage message, long deviceMicros) {
      long arrivalNanos = System.nanoTime();
      if (message.getLength() != 3) {
        return;
      }
      byte[] bytes = message.getMessage();
      int status = bytes[0] & 0xFF;
      int pitch = bytes[1] & 0x7F;
      int velocity = bytes[2] & 0x7F;
      learn(name, status, velocity);
      int channel = status & 0x0F;
      if (NoteFilter.release(status, velocity)) {
        PlayedAttack struck = held.released(channel, pitch);
        if (struck != null) {
          ear.released(name, channel, struck, stamps.stamp(arrivalNanos, deviceMicros));
        }
      } else if (filters.getOrDefault(name, NoteFilter.USUAL).attack(status, velocity)) {
        long nanos = stamps.stamp(arrivalNanos, deviceMicros);
        PlayedAttack struck = new PlayedAttack(nanos, velocity, pitch, null, null);
        held.struck(channel, struck);
        ear.struck(name, channel, struck);
      }
    }

    @Override
    public void close() {}
  }
}
