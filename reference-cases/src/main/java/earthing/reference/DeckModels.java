package earthing.reference;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;

/** Binds the circuit decks, read from the folder {@code decks} beside the cases. */
final class DeckModels {

    private DeckModels() {}

    static void register(Map<String, ReferenceModel> models) {
        models.put(
                "network.deck", given -> Deck.parse(content(given.word("deck"))).solve());
        models.put(
                "network.deck-phasor",
                given -> Deck.parse(content(given.word("deck"))).solve(given.value("frequency")));
    }

    private static String content(String deck) {
        try {
            return Files.readString(Path.of("decks").resolve(deck));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
