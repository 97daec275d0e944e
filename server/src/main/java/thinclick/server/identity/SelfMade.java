package thinclick.server.identity;

import java.io.IOException;
import java.io.StringWriter;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.PosixFilePermission;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Duration;
import java.time.Instant;
import java.util.Date;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.openssl.jcajce.JcaPEMWriter;
import org.bouncycastle.operator.OperatorException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;
import org.bouncycastle.util.io.pem.PemObject;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;

/**
 * A certificate that vouches for itself: made once, because clients remember its fingerprint, and
 * readable by nobody but its owner. It names no computer and no person.
 */
final class SelfMade {
  private static final Logger LOG = LoggerFactory.getLogger(SelfMade.class);

  /**
   * It is trusted by its fingerprint, so that an end of its validity would only lock people out.
   */
  private static final Duration VALID = Duration.ofDays(20 * 365L);

  private static final Duration CLOCKS_DIFFER = Duration.ofDays(2);
  private static final Set<PosixFilePermission> OWNER_ONLY =
      PosixFilePermissions.fromString("rw-------");

  private SelfMade() {}

  static HostIdentity readOrMake(Path file) {
    if (!Files.exists(file)) {
      keep(file, make(Instant.now()));
    }
    tighten(file);
    PemFile pem = PemFile.read("--db", file);
    return new HostIdentity(pem.key("--db", file), pem.chain("--db", file));
  }

  /** A fresh key and its certificate, valid from {@code now}. */
  static HostIdentity make(Instant now) {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
      generator.initialize(new ECGenParameterSpec("secp256r1"));
      KeyPair pair = generator.generateKeyPair();
      X500Name name = new X500Name("CN=Thinclick host");
      JcaX509v3CertificateBuilder builder =
          new JcaX509v3CertificateBuilder(
              name,
              new BigInteger(120, new SecureRandom()).add(BigInteger.ONE),
              Date.from(now.minus(CLOCKS_DIFFER)),
              Date.from(now.plus(VALID)),
              name,
              pair.getPublic());
      builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
      builder.addExtension(
          Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
      builder.addExtension(
          Extension.subjectAlternativeName,
          false,
          new GeneralNames(
              new GeneralName[] {
                new GeneralName(GeneralName.dNSName, "localhost"),
                new GeneralName(GeneralName.iPAddress, "127.0.0.1")
              }));
      X509Certificate certificate =
          new JcaX509CertificateConverter()
              .getCertificate(
                  builder.build(
                      new JcaContentSignerBuilder("SHA256withECDSA").build(pair.getPrivate())));
      return new HostIdentity(pair.getPrivate(), List.of(certificate));
    } catch (GeneralSecurityException | OperatorException | IOException impossible) {
      throw new IllegalStateException("this Java can make no certificate", impossible);
    }
  }

  /** Whole or not at all; of two hosts that make one at once, the first one's stays. */
  private static void keep(Path file, HostIdentity made) {
    Path beside = file.resolveSibling("." + file.getFileName() + "." + UUID.randomUUID());
    try {
      FileAttribute<?>[] closed =
          posix(file)
              ? new FileAttribute<?>[] {PosixFilePermissions.asFileAttribute(OWNER_ONLY)}
              : new FileAttribute<?>[0];
      Files.createFile(beside, closed);
      tighten(beside);
      Files.writeString(beside, pem(made), StandardCharsets.US_ASCII, StandardOpenOption.WRITE);
      try {
        Files.move(beside, file);
      } catch (FileAlreadyExistsException other) {
        Files.delete(beside);
      }
    } catch (IOException problem) {
      throw new BadInput(
          "--db",
          "expected a folder that can be written, found " + file + ": " + problem.getMessage());
    }
  }

  private static String pem(HostIdentity made) throws IOException {
    StringWriter text = new StringWriter();
    try (JcaPEMWriter writer = new JcaPEMWriter(text)) {
      writer.writeObject(new PemObject("PRIVATE KEY", made.key().getEncoded()));
      for (X509Certificate each : made.chain()) {
        writer.writeObject(each);
      }
    }
    return text.toString();
  }

  private static void tighten(Path file) {
    try {
      if (posix(file)) {
        if (!Files.getPosixFilePermissions(file).equals(OWNER_ONLY)) {
          LOG.warn("{} could be read by others; now by its owner only", file.getFileName());
          Files.setPosixFilePermissions(file, OWNER_ONLY);
        }
      } else {
        boolean closed =
            file.toFile().setReadable(false, false) && file.toFile().setReadable(true, true);
        if (!closed) {
          LOG.warn("{} may be readable by others", file.getFileName());
        }
      }
    } catch (IOException problem) {
      LOG.warn("{} may be readable by others: {}", file.getFileName(), problem.getMessage());
    }
  }

  private static boolean posix(Path file) {
    return file.getFileSystem().supportedFileAttributeViews().contains("posix");
  }
}
