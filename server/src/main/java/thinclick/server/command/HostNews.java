package thinclick.server.command;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.disk.SafeName;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.invite.QrCode;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.MessageCodec;
import thinclick.server.host.RehearsalHost;
import thinclick.server.net.RoomNews;

/** What {@code serve} says on the operator's terminal: where it is reached, and by which links. */
final class HostNews implements RoomNews {
  private static final Logger LOG = LoggerFactory.getLogger(HostNews.class);
  private static final int PICTURE_MILLIMETRES = 80;

  private final PrintWriter out;
  private final boolean codes;
  private final @Nullable Path pictures;
  private final CompletableFuture<RehearsalHost> started = new CompletableFuture<>();

  /**
   * @param codes whether links are shown as QR codes, too
   * @param pictures folder for their pictures, null for none
   */
  HostNews(PrintWriter out, boolean codes, @Nullable Path pictures) {
    if (pictures != null && !Files.isDirectory(pictures)) {
      throw new BadInput("--invite-to", "expected a folder that exists, found " + pictures);
    }
    this.out = out;
    this.codes = codes;
    this.pictures = pictures;
  }

  /**
   * The host is up.
   *
   * @param called by which name the network is told of it, null where it is not
   */
  void hosting(RehearsalHost host, @Nullable String called) {
    synchronized (out) {
      greet(host, called);
      out.flush();
    }
    started.complete(host);
  }

  private void greet(RehearsalHost host, @Nullable String called) {
    List<String> addresses = host.addresses();
    out.println(
        "Thinclick listens at "
            + (host.encrypted() ? "wss" : "ws")
            + "://"
            + bracketed(addresses.get(0))
            + ":"
            + host.port()
            + MessageCodec.PATH);
    if (host.here()) {
      out.println("It is reached from this computer only; --host 0.0.0.0 lets others in.");
      return;
    }
    out.println(
        "It is reached at "
            + String.join(", ", addresses)
            + (host.encrypted()
                ? "; the certificate's code is " + said(host) + "."
                : ", without encryption: everybody on the way can read and change what is said."));
    out.println(
        "In a firewall, open TCP port "
            + host.port()
            + " for incoming connections"
            + (called == null
                ? "."
                : ", and UDP port 5353 so that \"" + called + "\" is found in the local network."));
    if (codes) {
      show(host.link(null));
    }
  }

  private static String said(RehearsalHost host) {
    var fingerprint = host.fingerprint();
    return fingerprint == null ? "not known" : fingerprint.said();
  }

  private static String bracketed(String address) {
    return address.contains(":") ? "[" + address + "]" : address;
  }

  private void show(JoinLink link) {
    out.println(link);
    out.println();
    out.print(QrCode.of(link.toString()).text());
    out.println();
  }

  @Override
  public void called(String roomId, String word) {
    var unused =
        started.thenAccept(
            host -> {
              JoinLink link = host.link(word);
              synchronized (out) {
                out.println("The room " + word + " is open: " + link);
                if (codes) {
                  out.println();
                  out.print(QrCode.of(link.toString()).text());
                  out.println();
                }
                out.flush();
              }
              draw(roomId, link);
            });
  }

  private void draw(String roomId, JoinLink link) {
    Path folder = pictures;
    if (folder == null) {
      return;
    }
    try {
      String svg = QrCode.of(link.toString()).svg(PICTURE_MILLIMETRES);
      OutputFile.write(picture(folder, roomId), svg.getBytes(StandardCharsets.UTF_8), true);
    } catch (BadInput problem) {
      LOG.atWarn().addKeyValue("room", roomId).log("no picture: {}", problem.getMessage());
    }
  }

  private static Path picture(Path folder, String roomId) {
    return SafeName.ofId(folder, roomId, "svg");
  }

  @Override
  public void over(String roomId) {
    Path folder = pictures;
    if (folder != null && !picture(folder, roomId).toFile().delete()) {
      LOG.atDebug().addKeyValue("room", roomId).log("its picture was gone already");
    }
  }
}
