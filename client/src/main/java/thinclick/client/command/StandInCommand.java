package thinclick.client.command;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomAddress;
import thinclick.client.standin.Manner;
import thinclick.client.standin.Slip;
import thinclick.client.standin.StandIn;
import thinclick.client.standin.Timing;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/** {@code stand-in}: simulated players join a room and play what they are dealt. */
@Command(
    name = "stand-in",
    mixinStandardHelpOptions = true,
    description = "Joins simulated players, marked as such, to a room until it closes.")
final class StandInCommand implements Callable<Integer> {
  @ArgGroup(multiplicity = "1")
  private Where where = new Where();

  /** The room, said in one of two ways. */
  static final class Where {
    @Option(
        names = "--link",
        paramLabel = "LINK",
        required = true,
        description = "The room's join link, thinclick://...")
    private @Nullable String link;

    @ArgGroup(exclusive = false)
    private @Nullable Called called;
  }

  /** By address and word. */
  static final class Called {
    @Option(
        names = "--server",
        paramLabel = "ADDRESS",
        required = true,
        description =
            "Where the room is hosted, such as 192.168.1.20:7420; its certificate must be"
                + " known to an authority unless it is this computer.")
    private String server = "";

    @Option(
        names = "--room",
        paramLabel = "WORD",
        required = true,
        description = "The room's word.")
    private String room = "";
  }

  @Option(
      names = "--name",
      paramLabel = "NAME",
      description = "Their nickname, numbered where there are several (default: ${DEFAULT-VALUE}).",
      defaultValue = "Stand-in")
  private String name = "Stand-in";

  @Option(
      names = "--count",
      paramLabel = "N",
      description = "How many, 1 to 24 (default: ${DEFAULT-VALUE}).",
      defaultValue = "1")
  private int count = 1;

  @Option(
      names = "--manner",
      paramLabel = "MANNER",
      description =
          "How they play (default: ${DEFAULT-VALUE}): steady, follows (the others), pushes or drags"
              + " (when the click goes), lost (turned around for two bars), ahead, behind, loose, stubborn;"
              + " several, with commas, in turn.",
      defaultValue = "steady")
  private String manner = "steady";

  @Option(
      names = "--timekeeper",
      paramLabel = "MS",
      description = "How far a beat wanders, standard deviation (default: the manner's).")
  private @Nullable Double timekeeperMillis;

  @Option(
      names = "--motor",
      paramLabel = "MS",
      description = "How far an attack misses, standard deviation (default: the manner's).")
  private @Nullable Double motorMillis;

  @Option(
      names = "--lean",
      paramLabel = "MS",
      description = "A steady lean, positive late (default: the manner's).")
  private @Nullable Double leanMillis;

  @Option(
      names = "--drops",
      paramLabel = "SHARE",
      description = "The share of written attacks left out, 0 to 1 (default: the manner's).")
  private @Nullable Double dropShare;

  @Option(
      names = "--displaced",
      paramLabel = "FROM-TO:STEPS",
      description = "Such as 9-12:1 for bars 9 to 12 played late by one whole step.")
  private String displaced = "";

  @Option(
      names = "--seed",
      paramLabel = "N",
      description = "Fixes their noise (default: ${DEFAULT-VALUE}).",
      defaultValue = "1")
  private long seed = 1;

  @Spec private CommandSpec spec = CommandSpec.create();

  private Called byLink() {
    JoinLink link = JoinLink.parse(Check.present("--link", where.link));
    if (link.word() == null) {
      throw new BadInput("--link", "expected the link of a room, found one of its host only");
    }
    Called called = new Called();
    called.server = link.toString();
    called.room = link.word();
    return called;
  }

  /** A manner's figures with those that were given in their place. */
  private Timing timing(Timing of) {
    return new Timing(
        timekeeperMillis == null ? of.timekeeperMillis() : timekeeperMillis,
        motorMillis == null ? of.motorMillis() : motorMillis,
        of.clickGain(),
        of.peerGain(),
        leanMillis == null ? of.leanMillis() : leanMillis,
        dropShare == null ? of.dropShare() : dropShare,
        of.silentDriftPercent());
  }

  @Override
  public Integer call() throws InterruptedException {
    Check.range("--count", count, 1L, 24);
    Check.range("--seed", seed, 0L, Check.MAX_SAFE);
    Called called = where.called == null ? byLink() : where.called;
    RoomAddress address = RoomAddress.parse(called.server);
    String room = called.room;
    List<Manner> manners = Arrays.stream(manner.split(",", -1)).map(Manner::of).toList();
    Slip slip = displaced.isEmpty() ? Slip.NONE : SlipOption.parse(displaced);
    Random seeds = new Random(seed);
    List<StandIn> joined = new ArrayList<>();
    try (LinkLoop loop = LinkLoop.start()) {
      for (int i = 1; i <= count; i++) {
        String each = count == 1 ? name : name + " " + i;
        Manner its = manners.get((i - 1) % manners.size());
        joined.add(
            StandIn.join(
                loop,
                address,
                room,
                each,
                timing(its.timing()),
                hand -> displaced.isEmpty() ? its.slip(hand) : slip,
                seeds.nextLong() >>> 11));
      }
      return watch(joined, called.room);
    }
  }

  /** Says who came in and who did not, until the room is closed for all of them. */
  private int watch(List<StandIn> joined, String room) throws InterruptedException {
    PrintWriter out = spec.commandLine().getOut();
    Set<StandIn> came = new LinkedHashSet<>();
    Set<StandIn> refused = new LinkedHashSet<>();
    boolean told = false;
    while (joined.stream().anyMatch(player -> player.state() != LinkState.CLOSED)) {
      for (StandIn player : joined) {
        LinkState state = player.state();
        if (state == LinkState.ONLINE) {
          came.add(player);
        } else if (state == LinkState.CLOSED && !came.contains(player) && refused.add(player)) {
          stayedOut(player);
        }
      }
      if (!told && !came.isEmpty() && came.size() + refused.size() == joined.size()) {
        told = true;
        out.println(in(came, room));
        out.flush();
      }
      Thread.sleep(100);
    }
    if (!told) {
      StandIn last = joined.get(0);
      throw new BadInput("", last.name() + " cannot come in: " + last.says());
    }
    out.println("The room is closed: " + came.iterator().next().says() + ".");
    out.flush();
    return refused.isEmpty() ? 0 : 1;
  }

  private void stayedOut(StandIn player) {
    PrintWriter err = spec.commandLine().getErr();
    if (count > 1) {
      err.println(player.name() + " cannot come in: " + player.says());
      err.flush();
    }
  }

  private String in(Set<StandIn> came, String room) {
    int here = came.size();
    return (here == 1 ? came.iterator().next().name() + " is" : here + " stand-ins are")
        + " in the room "
        + room
        + ".";
  }
}
