package org.thumbseal.archive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** The published scripts: each checks a seal with nothing of ours. */
enum OtherHand {
  OPENSSL("no openssl 3 here", "key.pem", "sh", "src/docs/verify-with-openssl.sh") {
    @Override
    boolean looked() throws Exception {
      return run("openssl", "version").output().matches("(?s)OpenSSL ([3-9]|\\d\\d).*");
    }
  },
  PYTHON(
      "no python3-jwcrypto here",
      "key.jwk",
      Files.exists(Path.of("/usr/bin/python3")) ? "/usr/bin/python3" : "python3",
      "src/docs/verify-with-python.py") {
    @Override
    boolean looked() throws Exception {
      return run(interpreter(), "-c", "import jwcrypto.jws").code() == 0;
    }
  },
  NODE(
      "no Node.js here, or 'npm ci' was not run in src/docs/verify-with-node",
      "key.jwk",
      "node",
      "src/docs/verify-with-node/verify-with-node.mjs") {
    @Override
    boolean looked() throws Exception {
      return Files.exists(Path.of(script()).resolveSibling("node_modules/jose"))
          && run(interpreter(), "--version").code() == 0;
    }
  };

  /** What a process answered; the code is -1 where there is no such program. */
  record Run(int code, String output) {}

  private static final Map<OtherHand, Boolean> KNOWN = new ConcurrentHashMap<>();

  private final String absence;
  private final String key;
  private final String interpreter;
  private final String script;

  OtherHand(String absence, String key, String interpreter, String script) {
    this.absence = absence;
    this.key = key;
    this.interpreter = interpreter;
    this.script = script;
  }

  abstract boolean looked() throws Exception;

  /** Whether this machine has what the script needs; asked once, for it costs a process. */
  boolean isHere() throws Exception {
    Boolean here = KNOWN.get(this);
    if (here == null) {
      here = looked();
      KNOWN.put(this, here);
    }
    return here;
  }

  String absence() {
    return "skipped: " + absence + ": the seal is not checked by that hand";
  }

  String interpreter() {
    return interpreter;
  }

  String script() {
    return script;
  }

  /** The file, in the form this one reads, in a folder that has both. */
  Path keyIn(Path folder) {
    return folder.resolve(key);
  }

  Run verify(Path... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of(interpreter, script));
    for (Path argument : arguments) {
      command.add(argument.toString());
    }
    return run(command.toArray(String[]::new));
  }

  static Run run(String... command) throws Exception {
    try {
      Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
      process.getOutputStream().close();
      String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      return new Run(process.waitFor(), output);
    } catch (IOException e) {
      return new Run(-1, String.valueOf(e.getMessage()));
    }
  }
}
