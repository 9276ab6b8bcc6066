package earthing.site.file;

import java.util.Collection;
import java.util.Locale;

/** Finds the word that a mistyped one was meant to be. */
final class Nearest {

    private static final int LONGEST = 60;

    private Nearest() {}

    /**
     * The nearest of some words by the number of letters to insert, remove, replace or swap.
     *
     * @param typed what was typed
     * @param words what is valid
     * @return the nearest word, empty if none is near: at most one letter in three may be wrong, two in a short word
     */
    static String of(String typed, Collection<String> words) {
        if (typed.length() > LONGEST) {
            return "";
        }
        String plain = typed.strip().toLowerCase(Locale.ROOT).replace('_', '-').replace(' ', '-');
        int bound = Math.max(2, plain.length() / 3);
        int least = Integer.MAX_VALUE;
        String nearest = "";
        for (String word : words) {
            if (Math.abs(word.length() - plain.length()) <= bound) {
                int distance = distance(plain, word);
                if (distance < least) {
                    least = distance;
                    nearest = word;
                }
            }
        }
        // "tee" is as far from "at" as from anything else: at least half of the letters have to be right.
        return least <= bound && least * 2 <= Math.max(plain.length(), 1) ? nearest : "";
    }

    /** Edit distance with swapped neighbours counted once (optimal string alignment). */
    private static int distance(String a, String b) {
        int[] beforeLast = new int[b.length() + 1];
        int[] last = new int[b.length() + 1];
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            last[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = last[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(replaced, 1 + Math.min(last[j], row[j - 1]));
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    row[j] = Math.min(row[j], beforeLast[j - 2] + 1);
                }
            }
            int[] spare = beforeLast;
            beforeLast = last;
            last = row;
            row = spare;
        }
        return last[b.length()];
    }
}
