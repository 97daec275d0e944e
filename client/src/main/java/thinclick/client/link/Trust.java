package thinclick.client.link;

import java.net.Socket;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.CertificateException;
import java.security.cert.X509Certificate;
import java.util.Arrays;
import javax.net.ssl.SSLEngine;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;
import javax.net.ssl.X509ExtendedTrustManager;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.invite.Fingerprint;

/**
 * Whether a server is the one that was meant. By the fingerprint of the join link, and by nothing
 * else where there is one; without a link by an authority that the system knows, or by what the
 * server showed when it was first met.
 */
final class Trust extends X509ExtendedTrustManager {
  /** Another certificate than the one that was promised or remembered, or none to go by. */
  static final class Untrusted extends CertificateException {
    private static final long serialVersionUID = 1L;

    Untrusted(String says) {
      super(says);
    }
  }

  private final String host;
  private final @Nullable Fingerprint pin;
  private final @Nullable KnownHosts known;
  private volatile String says = "";

  private Trust(String host, @Nullable Fingerprint pin, @Nullable KnownHosts known) {
    this.host = host;
    this.pin = pin;
    this.known = known;
  }

  static Trust of(RoomAddress address, @Nullable Path knownHosts) {
    return new Trust(
        address.said(), address.pin(), knownHosts == null ? null : new KnownHosts(knownHosts));
  }

  /** What a player should hear of it; empty where there is nothing to compare. */
  String says() {
    return says;
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String kind, SSLEngine engine)
      throws CertificateException {
    Fingerprint shown = Fingerprint.of(chain[0].getEncoded());
    if (pin != null) {
      if (!pin.equals(shown)) {
        throw new Untrusted(
            "the server at "
                + host
                + " is not the one of the join link: its certificate has the code "
                + shown.said()
                + ", the link's is "
                + pin.said()
                + "; ask for a new link, and compare the code with the host's");
      }
      return;
    }
    if (knownToSystem(chain, kind, engine)) {
      return;
    }
    KnownHosts remembered = known;
    if (remembered == null) {
      throw new Untrusted(
          "nobody vouches for the certificate of " + host + "; come in by the host's join link");
    }
    Fingerprint before = remembered.of(host);
    if (before == null) {
      remembered.keep(host, shown);
      says = "first meeting with " + host + ": its certificate has the code " + shown.said();
    } else if (!before.equals(shown)) {
      throw new Untrusted(
          "the server at "
              + host
              + " is not the one that was there before: its certificate has the code "
              + shown.said()
              + ", then it was "
              + before.said()
              + "; come in by a new join link, or take the host's line out of "
              + remembered.file()
              + " where its operator says that this is right");
    }
  }

  /** By the system's authorities, for the name that was asked for. */
  private boolean knownToSystem(X509Certificate[] chain, String kind, SSLEngine engine) {
    try {
      systemTrust().checkServerTrusted(chain, kind, engine);
      return true;
    } catch (CertificateException unknown) {
      return false;
    }
  }

  private static X509ExtendedTrustManager systemTrust() {
    try {
      TrustManagerFactory factory =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      factory.init((KeyStore) null);
      for (TrustManager each : factory.getTrustManagers()) {
        if (each instanceof X509ExtendedTrustManager manager) {
          return manager;
        }
      }
      throw new IllegalStateException(
          "no trust manager among " + Arrays.toString(factory.getTrustManagers()));
    } catch (GeneralSecurityException broken) {
      throw new IllegalStateException("this Java has no list of authorities", broken);
    }
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String kind) throws CertificateException {
    throw new Untrusted("expected a line of our own");
  }

  @Override
  public void checkServerTrusted(X509Certificate[] chain, String kind, Socket socket)
      throws CertificateException {
    throw new Untrusted("expected a line of our own");
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String kind) throws CertificateException {
    throw new Untrusted("clients show no certificates");
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String kind, Socket socket)
      throws CertificateException {
    throw new Untrusted("clients show no certificates");
  }

  @Override
  public void checkClientTrusted(X509Certificate[] chain, String kind, SSLEngine engine)
      throws CertificateException {
    throw new Untrusted("clients show no certificates");
  }

  @Override
  public X509Certificate[] getAcceptedIssuers() {
    return new X509Certificate[0];
  }
}
