package thinclick.client.sound;

import java.util.ArrayList;
import java.util.List;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.DataLine;
import javax.sound.sampled.LineUnavailableException;
import javax.sound.sampled.Mixer;
import javax.sound.sampled.SourceDataLine;

/** The outputs that the operating system offers through {@code javax.sound.sampled}. */
final class SystemOutputs implements Outputs {
  private static final AudioFormat FORMAT = new AudioFormat(Voice.RATE, 16, 2, true, false);
  private static final DataLine.Info LINE = new DataLine.Info(SourceDataLine.class, FORMAT);
  private static final int FRAME_BYTES = 4;

  @Override
  public List<String> names() {
    List<String> names = new ArrayList<>();
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (AudioSystem.getMixer(info).isLineSupported(LINE)) {
        names.add(info.getName());
      }
    }
    return List.copyOf(names);
  }

  @Override
  public OutputLine open(String name, int bufferFrames) throws NoOutput {
    try {
      SourceDataLine line = find(name);
      line.open(FORMAT, bufferFrames * FRAME_BYTES);
      line.start();
      return new Line(line);
    } catch (LineUnavailableException | IllegalArgumentException | SecurityException none) {
      throw new NoOutput(none.getMessage() == null ? "no line" : none.getMessage());
    }
  }

  private static SourceDataLine find(String name) throws LineUnavailableException {
    for (Mixer.Info info : AudioSystem.getMixerInfo()) {
      if (info.getName().equals(name)) {
        return (SourceDataLine) AudioSystem.getMixer(info).getLine(LINE);
      }
    }
    return (SourceDataLine) AudioSystem.getLine(LINE);
  }

  private record Line(SourceDataLine line) implements OutputLine {
    @Override
    public int bufferFrames() {
      return line.getBufferSize() / FRAME_BYTES;
    }

    @Override
    public int availableFrames() {
      return line.available() / FRAME_BYTES;
    }

    @Override
    public long playedFrames() {
      return line.getLongFramePosition();
    }

    @Override
    public int write(byte[] bytes, int frames) {
      return line.write(bytes, 0, frames * FRAME_BYTES) / FRAME_BYTES;
    }

    @Override
    public void close() {
      line.close();
    }
  }
}
