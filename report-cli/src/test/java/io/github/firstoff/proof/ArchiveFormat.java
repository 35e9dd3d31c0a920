package io.github.firstoff.proof;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import org.verapdf.core.VeraPDFException;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Holds files against ISO 19005 and ISO 14289 with the validator veraPDF. */
final class ArchiveFormat {
    static {
        VeraGreenfieldFoundryProvider.initialise();
    }

    private ArchiveFormat() {}

    /** What in a file departs from a standard: clause, message and place, once each. */
    static List<String> departures(byte[] file, PDFAFlavour flavour) throws IOException {
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(file), flavour);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            ValidationResult result = validator.validate(parser);
            if (result.isCompliant()) {
                return List.of();
            }
            return result.getTestAssertions().stream()
                    .filter(each -> each.getStatus() == TestAssertion.Status.FAILED)
                    .map(each -> each.getRuleId().getClause() + "-"
                            + each.getRuleId().getTestNumber() + ": " + each.getMessage() + " at "
                            + each.getLocation().getContext())
                    .distinct()
                    .toList();
        } catch (VeraPDFException fault) {
            throw new IOException(fault);
        }
    }
}
