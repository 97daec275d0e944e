package thinclick.server.engraving;

import java.util.List;

/**
 * One bar as it is written.
 *
 * @param index the bar, from 0
 * @param symbols notes and rests that fill it, in order
 * @param beams the runs of symbols under one beam, each as indexes into {@code symbols}; none
 *     reaches over a beat
 */
public record SpelledBar(int index, List<Symbol> symbols, List<List<Integer>> beams) {
  public SpelledBar {
    symbols = List.copyOf(symbols);
    beams = beams.stream().map(List::copyOf).toList();
  }
}
