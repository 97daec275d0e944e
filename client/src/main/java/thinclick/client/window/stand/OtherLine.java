package thinclick.client.window.stand;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;

/**
 * The line of a fellow player below the own staff.
 *
 * @param name as in the deal
 * @param steps where something is written for them, from bar 1
 */
record OtherLine(String name, Set<Integer> steps) {
  /** More lines than these would crowd the own part. */
  static final int MOST = 4;

  OtherLine {
    steps = Set.copyOf(steps);
  }

  /** Lines for those dealt nearest to the own part; none without a deal. */
  static List<OtherLine> of(@Nullable Dealt dealt) {
    if (dealt == null) {
      return List.of();
    }
    List<Part> parts = dealt.parts();
    int own = 0;
    for (int i = 0; i < parts.size(); i++) {
      if (parts.get(i).player().equals(dealt.own())) {
        own = i;
      }
    }
    int first = Math.max(0, Math.min(own - MOST / 2, parts.size() - MOST - 1));
    return parts.stream()
        .skip(first)
        .filter(part -> !part.player().equals(dealt.own()))
        .limit(MOST)
        .map(part -> new OtherLine(part.player(), Set.copyOf(part.attackSteps())))
        .collect(Collectors.toList());
  }
}
