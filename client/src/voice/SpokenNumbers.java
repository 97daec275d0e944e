import com.sun.speech.freetts.Item;
import com.sun.speech.freetts.Utterance;
import com.sun.speech.freetts.UtteranceProcessor;
import com.sun.speech.freetts.Voice;
import com.sun.speech.freetts.audio.NullAudioPlayer;
import com.sun.speech.freetts.en.us.cmu_us_kal.KevinVoiceDirectory;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;

/**
 * Makes the spoken numbers of the count-in, each at three lengths, and the frames at which their
 * vowels begin: {@code mvn -B -N generate-resources -Pvoice}. It is run by hand, and what it leaves
 * is kept; README.md beside that says which voice this is and why.
 */
public final class SpokenNumbers {
  private static final List<String> NUMBERS =
      List.of("one", "two", "three", "four", "five", "six", "seven");
  private static final Set<String> VOWELS = Set.of("aa", "uw", "iy", "ao", "ay", "ih", "eh");

  private static final int VOICE_RATE = 16_000;
  private static final int RATE = 48_000;

  /** No word is longer than these, seconds: what was spoken longer is spoken faster. */
  private static final double USUAL = 0.36;

  private static final double QUICK = 0.26;
  private static final double SHORT = 0.18;

  /** No more than this share of that from the vowel on: a two at 320 leaves room for the next one. */
  private static final double FROM_VOWEL = 0.8;

  /** The loudest 50 ms of every word, and what no sample is above; shares of full scale. */
  private static final double LOUD = 0.145;

  private static final double PEAK = 0.7;

  /** What made the words plainest to a recogniser in noise: README.md beside the words. */
  private static final float PITCH = 110;

  private static final double BRIGHTER = Math.pow(10, 3 / 20.0);
  private static final double BRIGHT_FROM = 1_000;

  private static final Voice VOICE =
      Arrays.stream(new KevinVoiceDirectory().getVoices())
          .filter(voice -> voice.getName().equals("kevin16"))
          .findFirst()
          .orElseThrow();

  /** A word: its samples at 48 kHz and the sample at which its vowel begins. */
  private record Word(double[] samples, int vowel) {}

  private SpokenNumbers() {}

  /**
   * @param args the folder to write to
   */
  public static void main(String[] args) throws IOException {
    Path folder = Files.createDirectories(Path.of(args[0]));
    StringBuilder vowels = new StringBuilder();
    for (String number : NUMBERS) {
      Word spoken = trimmed(spoken(number));
      vowels.append(write(folder, number, finished(within(USUAL, spoken))));
      vowels.append(write(folder, number + "-quick", finished(within(QUICK, spoken))));
      vowels.append(write(folder, number + "-short", finished(within(SHORT, spoken))));
    }
    Files.writeString(
        folder.resolve("vowels.properties"),
        "# The frame at which the vowel of each word begins, 48,000 a second.\n" + vowels);
    System.exit(0); // the voice leaves a thread behind
  }

  /** What the voice says, and the vowel's beginning by the voice's own marks of its phones. */
  private static Word spoken(String number) {
    ByteArrayOutputStream said = new ByteArrayOutputStream();
    Utterance[] heard = new Utterance[1];
    VOICE.setAudioPlayer(
        new NullAudioPlayer() {
          @Override
          public boolean write(byte[] bytes, int offset, int size) {
            said.write(bytes, offset, size);
            return true;
          }
        });
    if (VOICE.getOutputQueue() == null) {
      VOICE.setOutputQueue(Voice.createOutputThread());
      VOICE.allocate();
      VOICE.setPitch(PITCH);
    }
    @SuppressWarnings("unchecked") // as the voice declares it
    List<UtteranceProcessor> steps = VOICE.getUtteranceProcessors();
    UtteranceProcessor look = utterance -> heard[0] = utterance;
    steps.add(look);
    VOICE.speak(number);
    steps.remove(look);
    int from = -1;
    int vowel = -1;
    int end = 0;
    int to = 0;
    for (Item phone = heard[0].getRelation("Segment").getHead();
        phone != null;
        phone = phone.getNext()) {
      boolean silent = phone.toString().equals("pau");
      from = from < 0 && !silent ? end : from;
      vowel = vowel < 0 && VOWELS.contains(phone.toString()) ? end : vowel;
      end = Math.round(phone.getFeatures().getFloat("end") * VOICE_RATE);
      to = silent ? to : end;
    }
    ByteBuffer samples = ByteBuffer.wrap(said.toByteArray());
    double[] word = new double[to - from];
    for (int i = 0; i < word.length; i++) {
      word[i] = samples.getShort(2 * (from + i)) / 32_768.0;
    }
    return new Word(raised(brighter(word)), (vowel - from) * (RATE / VOICE_RATE));
  }

  /** A gentle shelf: more of what is left when a low-pass of the first order is taken away. */
  private static double[] brighter(double[] word) {
    double share = 1 - Math.exp(-2 * Math.PI * BRIGHT_FROM / VOICE_RATE);
    double low = 0;
    double[] bright = new double[word.length];
    for (int i = 0; i < word.length; i++) {
      low += share * (word[i] - low);
      bright[i] = low + BRIGHTER * (word[i] - low);
    }
    return bright;
  }

  /** From the voice's rate to three times that, by a sinc of 32 samples to either side. */
  private static double[] raised(double[] low) {
    int times = RATE / VOICE_RATE;
    double[] high = new double[low.length * times];
    for (int i = 0; i < high.length; i++) {
      double at = (double) i / times;
      for (int k = Math.max(0, (int) at - 31); k < Math.min(low.length, (int) at + 33); k++) {
        double off = at - k;
        double sinc = off == 0 ? 1 : Math.sin(Math.PI * off) / (Math.PI * off);
        high[i] += low[k] * sinc * (0.5 + 0.5 * Math.cos(Math.PI * off / 33));
      }
    }
    return high;
  }

  /**
   * Without what is 38 dB below its peak at either end; begun 4 ms earlier, so that fading in takes
   * nothing from a t.
   */
  private static Word trimmed(Word word) {
    double least = 0.0125 * Arrays.stream(word.samples).map(Math::abs).max().orElse(0);
    int from = 0;
    int to = word.samples.length;
    while (Math.abs(word.samples[from]) < least) {
      from++;
    }
    while (Math.abs(word.samples[to - 1]) < least) {
      to--;
    }
    from = Math.max(0, from - 4 * RATE / 1_000);
    return new Word(Arrays.copyOfRange(word.samples, from, to), word.vowel - from);
  }

  /**
   * Spoken faster where it is longer: pieces of 20 ms, each taken from where it goes on best within
   * 6 ms, overlap by half. The pitch stays.
   */
  private static Word within(double seconds, Word word) {
    int rest = word.samples.length - word.vowel;
    int hop = RATE / 100;
    double faster =
        Math.max(
            word.samples.length / (seconds * RATE),
            (rest + hop) / (FROM_VOWEL * seconds * RATE + hop));
    if (faster <= 1) {
      return word;
    }
    int search = 6 * RATE / 1_000;
    double[] out = new double[(int) (word.samples.length / faster)];
    int last = 0;
    for (int at = 0; at < out.length; at += hop) {
      int wanted = (int) (at * faster);
      int best = at == 0 ? 0 : wanted;
      double most = Double.NEGATIVE_INFINITY;
      for (int from = wanted - search; at > 0 && from <= wanted + search; from++) {
        double alike = 0;
        for (int i = 0; i < hop; i++) {
          alike += sample(word, from + i) * sample(word, last + hop + i);
        }
        if (alike > most) {
          most = alike;
          best = from;
        }
      }
      for (int i = 0; i < 2 * hop && at + i < out.length; i++) {
        double share = at == 0 && i < hop ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * i / hop);
        out[at + i] += share * sample(word, best + i);
      }
      last = best;
    }
    // The middle of every piece, a hop after its beginning, is where it was taken from.
    return new Word(out, (int) Math.round(hop + (word.vowel - hop) / faster));
  }

  private static double sample(Word word, int at) {
    return at < 0 || at >= word.samples.length ? 0 : word.samples[at];
  }

  /** As loud as the others, beginning from nothing and ending in it. */
  private static Word finished(Word word) {
    double[] samples = word.samples;
    int loud = RATE / 20;
    double most = 0;
    double peak = 0;
    double sum = 0;
    for (int i = 0; i < samples.length; i++) {
      sum += samples[i] * samples[i] - (i < loud ? 0 : samples[i - loud] * samples[i - loud]);
      most = Math.max(most, sum / loud);
      peak = Math.max(peak, Math.abs(samples[i]));
    }
    double gain = Math.min(LOUD / Math.sqrt(most), PEAK / peak);
    int in = 3 * RATE / 1_000;
    int out = 15 * RATE / 1_000;
    double[] finished = new double[samples.length];
    for (int i = 0; i < samples.length; i++) {
      double begins = Math.min(1, (double) i / in);
      double ends = Math.min(1, (double) (samples.length - 1 - i) / out);
      finished[i] = samples[i] * gain * begins * ends;
    }
    return new Word(finished, word.vowel);
  }

  private static String write(Path folder, String name, Word word) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(2 * word.samples.length);
    bytes.order(java.nio.ByteOrder.LITTLE_ENDIAN);
    for (double sample : word.samples) {
      bytes.putShort((short) Math.round(sample * Short.MAX_VALUE));
    }
    AudioSystem.write(
        new AudioInputStream(
            new ByteArrayInputStream(bytes.array()),
            new AudioFormat(RATE, 16, 1, true, false),
            word.samples.length),
        AudioFileFormat.Type.WAVE,
        folder.resolve(name + ".wav").toFile());
    return String.format(Locale.ROOT, "%s=%d\n", name, word.vowel);
  }
}
