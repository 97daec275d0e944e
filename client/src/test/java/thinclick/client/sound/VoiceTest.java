package thinclick.client.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import thinclick.protocol.file.Drill;
import thinclick.server.material.Stock;

/** What the voices are made of, by their samples and their spectrum. */
class VoiceTest {
  private static final int BINS = 8_192;

  @ParameterizedTest
  @EnumSource(names = {"BEAT", "ONE"})
  void theClickRisesWithinAMillisecond(Voice voice) {
    double largest = 0;
    for (int i = 0; i < Voice.RATE / 1_000; i++) {
      largest = Math.max(largest, Math.abs(voice.sample(i)));
    }
    assertThat(largest).as("within 1 ms it is nearly as loud as it gets").isGreaterThan(0.8);
    assertThat(Math.abs(voice.sample(0))).as("and begins from nothing").isLessThan(1e-6f);
    double first = Math.abs(voice.sample(4));
    assertThat(first).as("without a step").isLessThan(0.2);
  }

  @ParameterizedTest
  @EnumSource(names = {"BEAT", "ONE"})
  void theClicksEnergyLiesMostlyBetweenOneAndFourKilohertz(Voice voice) {
    double[] power = power(voice);
    double all = IntStream.range(0, power.length).mapToDouble(i -> power[i]).sum();
    double inside = IntStream.range(bin(1_000), bin(4_000)).mapToDouble(i -> power[i]).sum();
    assertThat(inside / all).isGreaterThan(0.85);
  }

  @Test
  void theOneLiesAFifthHigher() {
    assertThat(strongest(Voice.ONE) / strongest(Voice.BEAT)).isCloseTo(1.5, within(0.02));
  }

  @Test
  void noVoiceIsLouderThanTheClick() {
    for (Voice voice : Voice.values()) {
      double peak = 0;
      for (int i = 0; i < voice.frames(); i++) {
        peak = Math.max(peak, Math.abs(voice.sample(i)));
      }
      assertThat(peak).as("%s", voice).isCloseTo(voice.loudest(), within(1e-6));
      assertThat(peak).isLessThanOrEqualTo(1);
      assertThat(Math.abs(voice.sample(voice.frames() - 1))).isLessThan(1e-3f);
    }
  }

  @Test
  void rolesAreHeardApart() {
    Set<Voice> band =
        EnumSet.of(
            Voice.ofRole("ride"),
            Voice.ofRole("bass"),
            Voice.ofRole("clave"),
            Voice.ofRole("shaker"),
            Voice.ofRole("comping"),
            Voice.ofRole("horn answers"));
    assertThat(band).hasSize(6).doesNotContain(Voice.BEAT, Voice.ONE);
    assertThat(Voice.ofRole(null)).isEqualTo(Voice.WOOD);
  }

  /** What stock drills call their chairs' work; only comping is meant to sound as wood. */
  @Test
  void everyRoleOfTheStockHasASoundOfItsOwn() {
    Set<String> woods =
        Stock.drills().stream()
            .flatMap(drill -> drill.chairs().stream())
            .map(Drill.Chair::role)
            .filter(role -> role != null && Voice.ofRole(role) == Voice.WOOD)
            .collect(Collectors.toSet());
    assertThat(woods).allMatch(role -> role.contains("comp"));
  }

  private static int bin(double hertz) {
    return (int) Math.round(hertz * BINS / Voice.RATE);
  }

  private static double strongest(Voice voice) {
    double[] power = power(voice);
    int best = 1;
    for (int i = 1; i < power.length; i++) {
      best = power[i] > power[best] ? i : best;
    }
    return best * (double) Voice.RATE / BINS;
  }

  /** By the definition of the discrete Fourier transform, up to 8 kHz. */
  private static double[] power(Voice voice) {
    double[] power = new double[bin(8_000)];
    for (int k = 0; k < power.length; k++) {
      double real = 0;
      double imaginary = 0;
      for (int i = 0; i < voice.frames(); i++) {
        double turn = 2 * Math.PI * k * i / BINS;
        real += voice.sample(i) * Math.cos(turn);
        imaginary -= voice.sample(i) * Math.sin(turn);
      }
      power[k] = real * real + imaginary * imaginary;
    }
    return power;
  }
}
