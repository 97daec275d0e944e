package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.security.cert.X509Certificate;
import java.time.Duration;
import java.util.HexFormat;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.TrustManager;
import javax.net.ssl.X509ExtendedTrustManager;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.json.BadInput;

/** The certificate that a host shows, and the lines that it takes. */
class EncryptionTest {
  @TempDir Path folder;
  private RehearsalHost host;

  @AfterEach
  void stop() {
    if (host != null) {
      host.close();
    }
  }

  private HostOptions options(String database) {
    return HostOptions.local(folder.resolve(database));
  }

  private Path identity(String database) {
    return folder.resolve(database + ".identity.pem");
  }

  /** Starts and stops, so that a certificate is made. */
  private Fingerprint shownOnce(HostOptions options) {
    try (RehearsalHost once = RehearsalHost.start(options.encrypting(Encryption.ALL))) {
      return once.fingerprint();
    }
  }

  @Test
  void selfMadeCertificateStaysAndIsReadableByItsOwnerOnly() throws IOException {
    Fingerprint first = shownOnce(options("a.db"));

    assertThat(shownOnce(options("a.db"))).isEqualTo(first);
    assertThat(shownOnce(options("b.db"))).isNotEqualTo(first);
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(identity("a.db"))))
        .isEqualTo("rw-------");
    Files.setPosixFilePermissions(identity("a.db"), PosixFilePermissions.fromString("rw-r--r--"));
    shownOnce(options("a.db"));
    assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(identity("a.db"))))
        .isEqualTo("rw-------");
  }

  @Test
  void selfMadeCertificateNamesNobody() throws Exception {
    Fingerprint shown = shownOnce(options("a.db"));
    X509Certificate certificate = certificate(identity("a.db"));

    assertThat(Fingerprint.of(certificate.getEncoded())).isEqualTo(shown);
    assertThat(certificate.getSubjectX500Principal().getName()).isEqualTo("CN=Thinclick host");
    assertThat(certificate.getSubjectAlternativeNames().toString())
        .isEqualTo("[[2, localhost], [7, 127.0.0.1]]");
    certificate.verify(certificate.getPublicKey());
  }

  private static X509Certificate certificate(Path pem) throws Exception {
    String text = Files.readString(pem);
    byte[] block =
        text.substring(text.indexOf("-----BEGIN CERTIFICATE")).getBytes(StandardCharsets.US_ASCII);
    return (X509Certificate)
        java.security.cert.CertificateFactory.getInstance("X.509")
            .generateCertificate(new java.io.ByteArrayInputStream(block));
  }

  @Test
  void loopbackAloneNeedsNoCertificate() {
    host = RehearsalHost.start(options("a.db"));

    assertThat(host.fingerprint()).isNull();
    assertThat(host.link("kodamine"))
        .hasToString("thinclick://127.0.0.1:" + host.port() + "/kodamine?plain");
    assertThat(identity("a.db")).doesNotExist();
  }

  @Test
  void ownCertificateIsShown() {
    Fingerprint own = shownOnce(options("a.db"));
    Path pem = identity("a.db");

    assertThat(shownOnce(options("b.db").showing(pem, pem))).isEqualTo(own);
    assertThat(identity("b.db")).doesNotExist();
  }

  @Test
  void certificatesThatCannotBeUsedAreSaidInOneLine() throws IOException {
    shownOnce(options("a.db"));
    shownOnce(options("b.db"));
    Path text = Files.writeString(folder.resolve("text.pem"), "no certificate\n");

    refused(options("c.db").showing(identity("a.db"), identity("b.db")), "expected the key of");
    refused(options("c.db").showing(text, identity("a.db")), "--certificate: expected a certif");
    refused(options("c.db").showing(identity("a.db"), text), "--certificate-key: expected a priv");
    refused(
        options("c.db").showing(folder.resolve("none.pem"), identity("a.db")),
        "--certificate: expected a PEM file, found none at");
  }

  private static void refused(HostOptions options, String says) {
    assertThatThrownBy(() -> RehearsalHost.start(options))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining(says);
  }

  @Test
  void onePortSpeaksBothToThisComputer() throws Exception {
    host = RehearsalHost.start(options("a.db").at("0.0.0.0", 0));

    assertThat(get("http://127.0.0.1:", trustingAll()).body()).startsWith("ok");
    assertThat(get("https://localhost:", trustingAll()).body()).startsWith("ok");
  }

  @Test
  void othersComeEncryptedOrNotAtAll() throws Exception {
    host = RehearsalHost.start(options("a.db").at("0.0.0.0", 0));
    String here = host.addresses().get(0);
    assumeThat(here).as("this computer has an address beside its loop").isNotEqualTo("127.0.0.1");

    HttpResponse<String> plain = get("http://" + here + ":", trustingAll());
    assertThat(plain.statusCode()).isEqualTo(426);
    assertThat(plain.body()).contains("encrypted lines only");
    assertThat(get("https://" + here + ":", trustingAll()).statusCode()).isNotEqualTo(426);
  }

  @Test
  @Tag("long")
  void halfAHandshakeIsGivenUp() throws Exception {
    host = RehearsalHost.start(options("a.db").encrypting(Encryption.ALL));
    try (Socket line = new Socket("127.0.0.1", host.port())) {
      line.setSoTimeout(20_000);
      OutputStream out = line.getOutputStream();
      out.write(HexFormat.of().parseHex("16030100c8010000c40303")); // a ClientHello that ends here
      out.flush();
      long began = System.nanoTime();

      assertThat(line.getInputStream().readAllBytes().length).isLessThan(64);
      assertThat(Duration.ofNanos(System.nanoTime() - began)).isLessThan(Duration.ofSeconds(10));
    }
  }

  private HttpResponse<String> get(String to, SSLContext trusting) throws Exception {
    return HttpClient.newBuilder()
        .sslContext(trusting)
        .build()
        .send(
            HttpRequest.newBuilder(URI.create(to + host.port() + "/health")).build(),
            HttpResponse.BodyHandlers.ofString());
  }

  private static SSLContext trustingAll() throws Exception {
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(null, new TrustManager[] {new Everybody()}, new SecureRandom());
    return context;
  }

  private static final class Everybody extends X509ExtendedTrustManager {
    @Override
    public void checkClientTrusted(X509Certificate[] chain, String kind, Socket socket) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String kind, Socket socket) {}

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String kind, SSLEngine engine) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String kind, SSLEngine engine) {}

    @Override
    public void checkClientTrusted(X509Certificate[] chain, String kind) {}

    @Override
    public void checkServerTrusted(X509Certificate[] chain, String kind) {}

    @Override
    public X509Certificate[] getAcceptedIssuers() {
      return new X509Certificate[0];
    }
  }
}
