package thinclick.client.command;

import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thinclick.client.link.RoomAddress;
import thinclick.client.window.WindowOptions;
import thinclick.client.window.WindowOptions.Way;
import thinclick.client.window.look.Look.Shade;
import thinclick.protocol.json.BadInput;

/** What may be said of the window that is to open; without any of it the door is shown. */
final class WindowArguments {
  @Option(
      names = "--server",
      paramLabel = "ADDRESS",
      description = "a host's address, such as 192.168.1.20:7420; without --room opens one there")
  private @Nullable String server;

  @Option(names = "--room", paramLabel = "WORD", description = "the room word to come in with")
  private @Nullable String room;

  @Option(names = "--name", paramLabel = "NAME", description = "your name in the room")
  private @Nullable String name;

  @Option(names = "--here", description = "open a room on this computer and lead it")
  private boolean here;

  @Option(names = "--practise", description = "practise alone, with stand-ins")
  private boolean practise;

  @Option(
      names = "--network",
      description = "with --here: let other computers of the network in, without encryption")
  private boolean network;

  @Option(names = "--dark", description = "light ink on dark paper")
  private boolean dark;

  /** What they ask for; refused where they contradict each other. */
  WindowOptions options() {
    Way way = way();
    if (way != Way.DOOR && (name == null || name.isBlank())) {
      throw new BadInput("--name", "expected a name to come in with, found none");
    }
    if (server != null) {
      RoomAddress unused = RoomAddress.parse(server);
    }
    return new WindowOptions(
        way,
        server == null ? "" : server,
        room == null ? "" : room,
        name == null ? "" : name,
        network,
        dark ? Shade.DARK : null);
  }

  private Way way() {
    if (network && !here) {
      throw new BadInput("--network", "expected together with --here, found alone");
    }
    if (practise) {
      if (here || server != null || room != null) {
        throw new BadInput("--practise", "expected alone, found with a room");
      }
      return Way.PRACTICE;
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
