package org.thumbseal.index;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.Optional;

/** The kinds of base that a test is to be run on. */
enum Bases {
  SQLITE,
  POSTGRESQL;

  /** A fresh one; the test is skipped where there is none of the kind. */
  RecordsAddress fresh(Path folder) throws Exception {
    if (this == SQLITE) {
      return RecordsAddress.of(folder.resolve("index-" + System.nanoTime() + ".sqlite"));
    }
    Optional<PostgresCluster> cluster = PostgresCluster.find();
    assumeTrue(cluster.isPresent(), "no PostgreSQL server under /usr/lib/postgresql");
    return RecordsAddress.parse(cluster.orElseThrow().freshRecords());
  }
}
