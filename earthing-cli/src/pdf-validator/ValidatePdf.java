import java.io.FileInputStream;
import java.io.InputStream;
import java.util.List;
import java.util.TreeMap;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Prints for each file and standard how many rules were asked and which were broken. */
final class ValidatePdf {

    private static final List<PDFAFlavour> STANDARDS = List.of(PDFAFlavour.PDFA_2_U, PDFAFlavour.PDFUA_1);

    private ValidatePdf() {}

    public static void main(String[] files) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        boolean sound = files.length > 0;
        for (String file : files) {
            for (PDFAFlavour standard : STANDARDS) {
                sound &= keeps(file, standard);
            }
        }
        System.exit(sound ? 0 : 1);
    }

    private static boolean keeps(String file, PDFAFlavour standard) throws Exception {
        try (InputStream in = new FileInputStream(file);
                PDFAParser parser = Foundries.defaultInstance().createParser(in, standard)) {
            PDFAValidator validator = Foundries.defaultInstance().createValidator(standard, false);
            ValidationResult result = validator.validate(parser);
            System.out.println(file + ": " + standard + ", " + result.getTotalAssertions() + " checks: "
                    + (result.isCompliant() ? "kept" : "BROKEN"));
            TreeMap<String, Integer> broken = new TreeMap<>();
            for (TestAssertion check : result.getTestAssertions()) {
                if (check.getStatus() == TestAssertion.Status.FAILED) {
                    broken.merge(check.getRuleId().getClause() + ": " + check.getMessage(), 1, Integer::sum);
                }
            }
            broken.forEach((rule, times) -> System.out.println("  " + times + " times " + rule));
            return result.isCompliant();
        }
    }
}
