package earthing.cli;

/** Formats that commands write; each command names those it knows. */
enum Format {
    TEXT,
    HTML,
    PDF,
    JSON,
    CSV,
    JUNIT,
    SARIF
}
