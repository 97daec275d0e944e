package thinclick.client.link;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.invite.JoinLink;
import thinclick.server.host.Encryption;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** Whom a client believes, and what it says where it does not. */
class TrustTest {
  private static final Fingerprint OTHER =
      Fingerprint.of("another".getBytes(StandardCharsets.US_ASCII));

  @TempDir Path folder;
  private final LinkLoop loop = LinkLoop.start();
  private RehearsalHost host;
  private RehearsalHost second;

  @BeforeEach
  void start() {
    host = serve(0, Encryption.ALL);
  }

  @AfterEach
  void stop() {
    loop.close();
    host.close();
    if (second != null) {
      second.close();
    }
  }

  private RehearsalHost serve(int port, Encryption encryption) {
    return RehearsalHost.start(
        HostOptions.local(folder.resolve("room.db")).at("127.0.0.1", port).encrypting(encryption));
  }

  private LinkOptions options() {
    return LinkOptions.on(loop);
  }

  private LinkOptions remembering() {
    return options().rememberingHosts(folder.resolve("of the player").resolve("known-hosts"));
  }

  private RoomAddress byAddressAlone() {
    return RoomAddress.parse("wss://127.0.0.1:" + host.port());
  }

  @Test
  void roomIsOpenedAndJoinedByItsLink() {
    Seat leader = Seat.opens(options(), RoomAddress.of(host.link(null)), "Frau Ott").online();
    JoinLink link = JoinLink.parse(host.link(leader.link.word()).toString());
    Seat mina = Seat.joins(options(), RoomAddress.of(link), link.word(), "Mina").online().steady();

    assertThat(link.pin()).isEqualTo(host.fingerprint());
    assertThat(mina.says).isEqualTo("in the room " + link.word());
    assertThat(mina.link.clock().uncertaintyMicros()).isLessThan(5_000);
  }

  @Test
  void anotherCertificateThanTheLinkSaysIsRefusedInASentence() {
    JoinLink link = host.link("kodamine");
    Seat mina =
        Seat.joins(
                options(),
                RoomAddress.of(new JoinLink(link.host(), link.port(), "kodamine", OTHER, false)),
                "kodamine",
                "Mina")
            .sees(LinkState.CLOSED);

    assertThat(mina.says)
        .startsWith("the server at 127.0.0.1:" + host.port() + " is not the one of the join link")
        .contains(host.fingerprint().said())
        .contains(OTHER.said());
  }

  @Test
  void playerInARoomIsNotCarriedOverToAnImpostor() {
    Seat leader = Seat.opens(options(), RoomAddress.of(host.link(null)), "Frau Ott").online();
    int port = host.port();
    host.close();
    forgetIdentity();
    second = serve(port, Encryption.ALL);
    leader.sees(LinkState.CLOSED);

    assertThat(leader.says).contains("is not the one of the join link");
    assertThat(second.fingerprint()).isNotEqualTo(host.fingerprint());
  }

  @Test
  void hostMetByItsAddressIsKnownAgainAndAnotherInItsPlaceIsRefused() {
    Seat first = Seat.opens(remembering(), byAddressAlone(), "Frau Ott").online();
    assertThat(first.says).contains("first meeting").contains(host.fingerprint().said());
    first.link.close();
    Seat again = Seat.opens(remembering(), byAddressAlone(), "Frau Ott").online();
    assertThat(again.says).doesNotContain("first meeting");
    again.link.close();

    int port = host.port();
    host.close();
    forgetIdentity();
    second = serve(port, Encryption.ALL);
    Seat later =
        Seat.opens(remembering(), RoomAddress.parse("wss://127.0.0.1:" + port), "Frau Ott")
            .sees(LinkState.CLOSED);

    assertThat(later.says)
        .contains("is not the one that was there before")
        .contains(second.fingerprint().said())
        .contains("known-hosts");
  }

  private void forgetIdentity() {
    assertThat(folder.resolve("room.db.identity.pem")).exists();
    folder.resolve("room.db.identity.pem").toFile().delete();
  }

  @Test
  void selfMadeCertificateThatNobodyVouchesForIsRefused() {
    Seat mina = Seat.opens(options(), byAddressAlone(), "Mina").sees(LinkState.CLOSED);

    assertThat(mina.says).contains("nobody vouches").contains("join link");
  }

  @Test
  void plainLineIsRefusedWhereEverybodyMustComeEncrypted() {
    Seat mina =
        Seat.opens(options(), RoomAddress.local(host.port()), "Mina").sees(LinkState.CLOSED);

    assertThat(mina.says).contains("encrypted lines only");
  }

  @Test
  void encryptedLineToAHostWithoutSaysSo() {
    host.close();
    second = serve(0, Encryption.NONE);
    Seat mina =
        Seat.opens(remembering(), RoomAddress.parse("wss://127.0.0.1:" + second.port()), "Mina")
            .sees(LinkState.CLOSED);

    assertThat(mina.says).contains("does not encrypt").contains("ws://");
    assertThat(second.link(null).plain()).isTrue();
  }

  @Test
  void journalBringsItsAttacksToTheSameCertificateOnly() throws Exception {
    Path journals = folder.resolve("journals");
    Seat leader =
        Seat.opens(options().withJournal(journals), RoomAddress.of(host.link(null)), "Frau Ott")
            .online();
    try (var files = Files.list(journals)) {
      assertThat(Files.readString(files.findFirst().orElseThrow()))
          .contains(host.fingerprint().text());
    }
    leader.link.close();
  }
}
