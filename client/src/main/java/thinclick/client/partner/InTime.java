package thinclick.client.partner;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.StepGrid;
import thinclick.server.scoring.LiveScorer;
import thinclick.server.scoring.LiveScorer.Judgement;
import thinclick.server.scoring.LiveScorer.Kind;

/**
 * Partners heard in time: their written parts, on the pulse that the players share, so that nobody
 * waits for anybody. Where a partner leaves the part, or falls silent, what arrives sounds as it
 * arrives, until three attacks in a row answer the part again. Every note sounds once.
 */
public final class InTime {
  /** So many attacks in a row off the part, and the partner has left it. */
  private static final int LEAVES = 2;

  /** So many in a row that answer it, and the partner is back. */
  private static final int RETURNS = 3;

  /** So many written notes in a row unanswered, and the partner is silent. */
  private static final int SILENT = 3;

  /** An answer may take so long to arrive. */
  private static final long PATIENCE_MICROS = 600_000;

  /**
   * A note to be sounded.
   *
   * @param player whose
   * @param micros when, room time
   */
  public record Note(String player, long micros) {}

  private final StepGrid grid;
  private final LiveScorer scorer;
  private final Map<String, Partner> partners = new HashMap<>();
  private double pulseMillis;

  /**
   * @param take the take before its first attack
   * @param own the name of the player who listens
   */
  public InTime(Take take, String own) {
    grid = take.grid();
    scorer = new LiveScorer(take);
    for (Part part : take.parts()) {
      partners.put(part.player(), new Partner(part, !part.player().equals(own)));
    }
  }

  /**
   * An attack, own or a partner's, in the order of arrival. What belongs to one before it (a chord,
   * a double trigger) has sounded with that and says nothing of the part.
   *
   * @return true where it is to be sounded now, because it was not sounded in time
   */
  public boolean arrived(String player, long micros) {
    Partner partner = partners.get(player);
    if (partner == null) {
      return false;
    }
    Judgement now = scorer.judge(player, micros).get(0);
    if (now.kind() == Kind.SET_ASIDE) {
      return false;
    }
    Integer step = now.writtenStep();
    Double off = now.asynchronyMillis();
    boolean answers = step != null && off != null && now.displacement() == 0;
    if (step != null && off != null) {
      double gridMillis = grid.microsAt(step + now.displacement()) / 1e3;
      pulseMillis = micros / 1e3 - off - gridMillis;
    }
    return partner.other && partner.arrived(answers ? step : null, micros);
  }

  /**
   * The partners' notes that are due before an instant and were not given out before.
   *
   * @param nowMicros room time
   * @param untilMicros how far ahead
   */
  public List<Note> due(long nowMicros, long untilMicros) {
    List<Note> notes = new ArrayList<>();
    partners.forEach((name, partner) -> partner.due(nowMicros, untilMicros, name, notes));
    return notes;
  }

  /** True while a partner is heard in time and not as it arrives. */
  public boolean follows(String player) {
    Partner partner = partners.get(player);
    return partner != null && partner.follows;
  }

  private long sounding(int step) {
    return Math.round(grid.microsAt(step) + pulseMillis * 1e3);
  }

  /** One player's part on its way through the take. */
  private final class Partner {
    private final List<Integer> written;
    private final boolean other;
    private final Map<Integer, Long> unanswered = new HashMap<>();
    private boolean follows = true;
    private int next;
    private int good;
    private int bad;

    Partner(Part part, boolean other) {
      this.written = part.attackSteps();
      this.other = other;
    }

    boolean arrived(@Nullable Integer step, long micros) {
      boolean sounded = step != null && unanswered.remove(step) != null;
      if (step == null) {
        good = 0;
        bad++;
      } else {
        good++;
        bad = 0;
        unanswered.values().removeIf(at -> at < micros);
      }
      if (follows && bad >= LEAVES) {
        leave();
      } else if (!follows && good >= RETURNS && step != null) {
        follows = true;
        skipTo(sounding(step) + 1);
      }
      return !sounded;
    }

    private void leave() {
      follows = false;
      good = 0;
      unanswered.clear();
    }

    private void skipTo(long micros) {
      while (next < written.size() && sounding(written.get(next)) < micros) {
        next++;
      }
    }

    void due(long nowMicros, long untilMicros, String name, List<Note> into) {
      if (!other) {
        return;
      }
      long late =
          unanswered.values().stream().filter(at -> at < nowMicros - PATIENCE_MICROS).count();
      if (follows && late >= SILENT) {
        leave();
      }
      if (!follows) {
        skipTo(nowMicros);
        return;
      }
      while (next < written.size() && sounding(written.get(next)) < untilMicros) {
        int step = written.get(next++);
        long at = sounding(step);
        if (at >= nowMicros) {
          unanswered.put(step, at);
          into.add(new Note(name, at));
        }
      }
    }
  }
}
