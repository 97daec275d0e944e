package thinclick.client.command;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thinclick.client.link.RoomAddress;
import thinclick.client.window.WindowOptions;
import thinclick.client.window.WindowOptions.Way;
import thinclick.client.window.look.Look.Shade;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.json.BadInput;

/** What may be said of the window that is to open; without any of it the door is shown. */
final class WindowArguments {
  @Option(
      names = "--server",
      paramLabel = "ADDRESS",
      description =
          "A host's address, such as 192.168.1.20:7420; without --room it opens a room there.")
  private @Nullable String server;

  @Option(
      names = "--link",
      paramLabel = "LINK",
      description = "The join link to come in by, thinclick://..., instead of --server and --room.")
  private @Nullable String link;

  @Option(names = "--room", paramLabel = "WORD", description = "The room word to come in with.")
  private @Nullable String room;

  @Option(names = "--name", paramLabel = "NAME", description = "Your name in the room.")
  private @Nullable String name;

  @Option(names = "--here", description = "Opens a room on this computer, to lead it.")
  private boolean here;

  @Option(names = "--practise", description = "Practises alone, with stand-ins.")
  private boolean practise;

  @Option(names = "--network", description = "With --here, lets other computers of the network in.")
  private boolean network;

  @Option(names = "--dark", description = "Light ink on dark paper.")
  private boolean dark;

  /** What they ask for; refused where they contradict each other. */
  WindowOptions options() {
    Way way = way();
    if (way != Way.DOOR && (name == null || name.isBlank())) {
      throw new BadInput("--name", "expected a name to come in with, found none");
    }
    JoinLink invited = link == null ? null : JoinLink.parse(link);
    String address = server;
    String word = room;
    if (invited != null) {
      address = invited.toString();
      word = invited.word();
    }
    if (address != null) {
      RoomAddress unused = RoomAddress.parse(address);
    }
    return new WindowOptions(
        way,
        address == null ? "" : address,
        word == null ? "" : word,
        name == null ? "" : name,
        network,
        dark ? Shade.DARK : null);
  }

  private Way way() {
    if (network && !here) {
      throw new BadInput("--network", "expected together with --here, found alone");
    }
    if (practise) {
      if (here || server != null || room != null || link != null) {
        throw new BadInput("--practise", "expected alone, found with a room");
      }
      return Way.PRACTICE;
    }
    if (link != null) {
      if (here || server != null || room != null) {
        throw new BadInput("--link", "expected it alone, found --here, --server or --room too");
      }
      return JoinLink.parse(link).word() == null ? Way.THERE : Way.JOIN;
    }
    if (here) {
      if (server != null || room != null) {
        throw new BadInput("--here", "expected --here alone or --server, found both");
      }
      return Way.HERE;
    }
    if (server == null) {
      if (room != null) {
        throw new BadInput("--server", "expected the address of the room, found none");
      }
      return Way.DOOR;
    }
    return room == null ? Way.THERE : Way.JOIN;
  }
}
