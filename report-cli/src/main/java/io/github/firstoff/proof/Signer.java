package io.github.firstoff.proof;

import io.github.firstoff.report.pdf.SignatureBlock;
import io.github.firstoff.words.Labels;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.GregorianCalendar;
import java.util.Locale;
import java.util.Optional;
import java.util.TimeZone;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.multipdf.LayerUtility;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationWidget;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceDictionary;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAppearanceStream;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.SignatureOptions;
import org.apache.pdfbox.pdmodel.interactive.form.PDAcroForm;
import org.apache.pdfbox.pdmodel.interactive.form.PDField;
import org.apache.pdfbox.pdmodel.interactive.form.PDSignatureField;

/**
 * Signs a sheet on its first free line: a PAdES signature of the baseline level B-B (ETSI EN 319 142-1) and a visible block with
 * name, position and time. The signature is appended; what was there before, other signatures too, stays as it is to the last byte.
 */
public final class Signer {
    static final COSName SUBFILTER = COSName.getPDFName("ETSI.CAdES.detached");

    /** Room for certificates of long chains; what is not needed stays zero. */
    private static final int RESERVED = 12_000;

    private static final DateTimeFormatter WHEN = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm:ss 'UTC'", Locale.ROOT)
            .withZone(ZoneOffset.UTC);

    static {
        SheetFile.silenceLibrary();
    }

    private Signer() {}

    /**
     * The sheet with one more signature.
     *
     * @param sheet the sheet's file
     * @param key who signs
     * @param position the signer's position, for the visible block; empty if it shall not be stated
     * @param now when
     * @throws ProofRefused if it is no sheet, is encrypted, or has no free line to sign on
     */
    public static byte[] sign(byte[] sheet, SigningKey key, Optional<String> position, Instant now) {
        try (PDDocument document = Loader.loadPDF(sheet)) {
            if (document.isEncrypted()) {
                throw new ProofRefused("the file is encrypted; sheets are not, and are signed as they were made");
            }
            PDSignatureField field = freeField(document);
            PDSignature signature = new PDSignature();
            signature.setFilter(PDSignature.FILTER_ADOBE_PPKLITE);
            signature.setSubFilter(SUBFILTER);
            signature.setName(key.holder());
            signature.setReason(reason(field, position));
            GregorianCalendar time = GregorianCalendar.from(now.atZone(ZoneOffset.UTC));
            time.setTimeZone(TimeZone.getTimeZone("UTC"));
            signature.setSignDate(time);
            PDAnnotationWidget widget = field.getWidgets().get(0);
            COSArray rectangle = widget.getRectangle().getCOSArray();
            field.getCOSObject().setItem(COSName.V, signature);
            byte[] block = block(field, who(key.holder(), position), when(now, language(document)));
            try (PDDocument drawn = Loader.loadPDF(block);
                    SignatureOptions options = new SignatureOptions()) {
                options.setPreferredSignatureSize(RESERVED);
                document.addSignature(signature, content -> CmsSignature.sign(content.readAllBytes(), key), options);
                // The library takes a field without a picture for an invisible one.
                widget.getCOSObject().setItem(COSName.RECT, rectangle);
                PDAppearanceDictionary appearance = new PDAppearanceDictionary();
                appearance.setNormalAppearance(new PDAppearanceStream(
                        new LayerUtility(document).importPageAsForm(drawn, 0).getCOSObject()));
                widget.setAppearance(appearance);
                widget.getCOSObject().setNeedToBeUpdated(true);
                // The second half of the file's identity comes from the time, not from chance.
                document.setDocumentId(now.getEpochSecond());
                ByteArrayOutputStream out = new ByteArrayOutputStream(sheet.length + 4 * RESERVED);
                document.saveIncremental(out);
                return out.toByteArray();
            }
        } catch (IOException fault) {
            throw new ProofRefused("the file cannot be signed: " + fault.getMessage(), fault);
        }
    }

    private static PDSignatureField freeField(PDDocument document) {
        PDAcroForm form = document.getDocumentCatalog().getAcroForm(null);
        boolean any = false;
        if (form != null) {
            for (PDField field : form.getFields()) {
                if (field instanceof PDSignatureField place) {
                    any = true;
                    if (place.getSignature() == null) {
                        return place;
                    }
                }
            }
        }
        throw new ProofRefused(
                any
                        ? "every line to sign on is signed already"
                        : "the file has no line to sign on; only a sheet of this program can be signed");
    }

    /** What a signature is for: the role of the line, and the position of the signer. */
    static String reason(PDSignatureField field, Optional<String> position) {
        String role = role(field);
        return position.map(known -> role + ", " + known).orElse(role);
    }

    static String role(PDSignatureField field) {
        String role = field.getAlternateFieldName();
        return role == null ? field.getPartialName() : role;
    }

    /** The visible block of a field, as a page of its own. */
    static byte[] block(PDSignatureField field, String who, String when) {
        PDRectangle place = field.getWidgets().get(0).getRectangle();
        Optional<String> role = Optional.of(role(field))
                .filter(said -> field.getPartialName().startsWith(SignatureBlock.COUNTERSIGNATURE));
        return SignatureBlock.page(place.getWidth(), place.getHeight(), role, who, when);
    }

    /** The language that a sheet speaks. */
    static Labels language(PDDocument document) {
        String tag = document.getDocumentCatalog().getLanguage();
        return tag == null ? Labels.ENGLISH : Labels.of(Locale.forLanguageTag(tag));
    }

    static String who(String holder, Optional<String> position) {
        return position.map(known -> holder + ", " + known).orElse(holder);
    }

    static String when(Instant time, Labels language) {
        return language.say("sign.digitally", WHEN.format(time));
    }
}
