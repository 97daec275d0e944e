package thinclick.client.input;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MidiDevice;
import javax.sound.midi.Receiver;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Transmitter;
import javax.sound.midi.spi.MidiDeviceProvider;

/** A provider of MIDI inputs that a test plugs in and pulls out. */
public final class PluggedPads extends MidiDeviceProvider {
  private static final List<Pad> PLUGGED = new CopyOnWriteArrayList<>();

  /** Plugs a pad in. */
  public static Pad plug(String name) {
    Pad pad = new Pad(new Info(name));
    PLUGGED.add(pad);
    return pad;
  }

  /** Pulls a pad out. */
  public static void pull(Pad pad) {
    PLUGGED.remove(pad);
  }

  @Override
  public MidiDevice.Info[] getDeviceInfo() {
    return PLUGGED.stream().map(Pad::getDeviceInfo).toArray(MidiDevice.Info[]::new);
  }

  @Override
  public MidiDevice getDevice(MidiDevice.Info info) {
    return PLUGGED.stream()
        .filter(pad -> pad.getDeviceInfo() == info)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("not plugged in: " + info));
  }

  private static final class Info extends MidiDevice.Info {
    Info(String name) {
      super(name, "test", "a pad of a test's", "1");
    }
  }

  /** A pad. */
  public static final class Pad implements MidiDevice {
    private final MidiDevice.Info info;
    private final List<Wire> wires = new ArrayList<>();
    private boolean open;

    Pad(MidiDevice.Info info) {
      this.info = info;
    }

    /** Sends a message of three bytes. */
    public synchronized void send(int status, int data1, int data2, long deviceMicros) {
      try {
        ShortMessage message = new ShortMessage(status, data1, data2);
        for (Wire wire : wires) {
          if (wire.receiver != null) {
            wire.receiver.send(message, deviceMicros);
          }
        }
      } catch (InvalidMidiDataException wrong) {
        throw new IllegalArgumentException(wrong);
      }
    }

    @Override
    public MidiDevice.Info getDeviceInfo() {
      return info;
    }

    @Override
    public synchronized void open() {
      open = true;
    }

    @Override
    public synchronized void close() {
      open = false;
      wires.clear();
    }

    @Override
    public synchronized boolean isOpen() {
      return open;
    }

    @Override
    public long getMicrosecondPosition() {
      return -1;
    }

    @Override
    public int getMaxReceivers() {
      return 0;
    }

    @Override
    public int getMaxTransmitters() {
      return -1;
    }

    @Override
    public Receiver getReceiver() {
      throw new UnsupportedOperationException("an input only");
    }

    @Override
    public List<Receiver> getReceivers() {
      return List.of();
    }

    @Override
    public synchronized Transmitter getTransmitter() {
      Wire wire = new Wire();
      wires.add(wire);
      return wire;
    }

    @Override
    public synchronized List<Transmitter> getTransmitters() {
      return List.copyOf(wires);
    }
  }

  private static final class Wire implements Transmitter {
    private Receiver receiver;

    @Override
    public void setReceiver(Receiver to) {
      receiver = to;
    }

    @Override
    public Receiver getReceiver() {
      return receiver;
    }

    @Override
    public void close() {
      receiver = null;
    }
  }
}
