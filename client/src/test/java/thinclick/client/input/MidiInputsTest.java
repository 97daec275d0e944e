package thinclick.client.input;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.CopyOnWriteArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import thinclick.client.link.PlayedAttack;

/** Pads through the MIDI system's own door, plugged in and pulled out while it looks. */
class MidiInputsTest {
  private final List<PlayedAttack> struck = new CopyOnWriteArrayList<>();
  private final Map<PlayedAttack, Long> held = new ConcurrentHashMap<>();
  private volatile List<String> names = List.of();
  private volatile NoteFilter learned;
  private volatile String learnedOf;
  private final MidiInputs inputs =
      new MidiInputs(
          new MidiEar() {
            @Override
            public void struck(String input, int channel, PlayedAttack attack) {
              struck.add(attack);
            }

            @Override
            public void released(String input, int channel, PlayedAttack attack, long nanos) {
              held.put(attack, nanos);
            }

            @Override
            public void learned(String input, NoteFilter filter) {
              learned = filter;
              learnedOf = input;
            }

            @Override
            public void inputsChanged(List<String> now) {
              names = now;
            }
          });
  private final PluggedPads.Pad pad = PluggedPads.plug("pad one");

  @AfterEach
  void close() {
    PluggedPads.pull(pad);
    inputs.close();
  }

  @Test
  void onlyStruckNotesAreAttacks() {
    inputs.start();
    await().until(() -> names.contains("pad one"));
    long before = System.nanoTime();
    pad.send(0x90, 38, 96, -1);
    pad.send(0x90, 38, 0, -1); // note-on with velocity 0 is a note-off
    pad.send(0x80, 38, 64, -1);
    pad.send(0x90, 40, 7, -1); // a neighbouring pad trembles
    pad.send(0x99, 36, 8, -1); // any channel
    pad.send(0xB0, 64, 127, -1); // pedal
    pad.send(0xA0, 38, 50, -1); // aftertouch
    long after = System.nanoTime();

    assertThat(struck).extracting(PlayedAttack::pitch).containsExactly(38, 36);
    assertThat(struck).extracting(PlayedAttack::velocity).containsExactly(96, 8);
    assertThat(struck).allSatisfy(one -> assertThat(one.nanos()).isBetween(before, after));
  }

  @Test
  void aNoteThatIsLetGoHasItsLength() {
    inputs.start();
    await().until(() -> names.contains("pad one"));
    pad.send(0x90, 60, 96, 1_000_000);
    pad.send(0x91, 60, 90, 1_020_000); // the same key on another channel
    pad.send(0x90, 60, 0, 1_110_000);
    pad.send(0x80, 60, 64, 1_111_000); // let go already
    pad.send(0x81, 60, 64, 1_320_000);

    assertThat(held).hasSize(2);
    assertThat(held.get(struck.get(0)) - struck.get(0).nanos()).isBetween(0L, 110_000_000L);
    assertThat(held.get(struck.get(1)) - struck.get(1).nanos()).isBetween(0L, 300_000_000L);
  }

  @Test
  void aPadPulledOutAndPluggedInAgainPlaysOn() {
    inputs.start();
    await().until(() -> names.contains("pad one"));
    PluggedPads.pull(pad);
    await().until(() -> !names.contains("pad one"));
    PluggedPads.Pad again = PluggedPads.plug("pad one");
    try {
      await().until(() -> names.contains("pad one"));
      again.send(0x90, 38, 96, -1);
      assertThat(struck).hasSize(1);
    } finally {
      PluggedPads.pull(again);
    }
  }

  @Test
  void whatWasLearnedCountsAlone() {
    inputs.filters(Map.of("pad one", new NoteFilter(30, 9)));
    inputs.start();
    await().until(() -> names.contains("pad one"));
    pad.send(0x90, 38, 96, -1);
    pad.send(0x99, 38, 29, -1);
    pad.send(0x99, 38, 30, -1);
    assertThat(struck).extracting(PlayedAttack::velocity).containsExactly(30);
  }

  @Test
  void aPadIsLearnedFromFourSoftStrokes() {
    PluggedPads.Pad other = PluggedPads.plug("pad two");
    inputs.start();
    await().until(() -> names.containsAll(List.of("pad one", "pad two")));
    inputs.learn();
    other.send(0x90, 38, 3, -1); // somebody leans on another pad first
    for (int velocity : new int[] {30, 22, 26, 40}) {
      pad.send(0x99, 38, velocity, -1);
      pad.send(0x89, 38, 0, -1);
    }
    assertThat(learned).isEqualTo(new NoteFilter(11, 9));
    assertThat(learnedOf).isEqualTo("pad one");
    struck.clear();
    pad.send(0x99, 38, 10, -1);
    pad.send(0x90, 38, 90, -1);
    pad.send(0x99, 38, 11, -1);
    other.send(0x90, 38, 9, -1); // nothing was learned of this one
    PluggedPads.pull(other);
    assertThat(struck).extracting(PlayedAttack::velocity).containsExactly(11, 9);
  }
}
