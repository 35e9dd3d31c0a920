package io.github.firstoff.inspection;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which order, batch, material, machine and people a sheet is about. Everything is optional: what is missing is printed as
 * "not stated".
 *
 * @param issuer the firm that issues the sheet
 * @param customer the firm that the parts are for
 * @param job the job's number
 * @param batch the batch's number
 * @param order the customer's order
 * @param quantity how many pieces the batch has
 * @param materials the materials with their heats and certificates
 * @param machine the machine
 * @param program the program that the machine ran
 * @param inspector who signs
 * @param date the date of the sheet
 * @param firstArticle what kind of first article, and why
 * @param certificateNumber the number of the certificate
 * @param processes special processes, whose outcome no measurement of the part shows
 * @param inspectionDocument which inspection document of EN 10204 the order asks for
 */
public record Job(
        Optional<Firm> issuer,
        Optional<Firm> customer,
        Optional<String> job,
        Optional<String> batch,
        Optional<String> order,
        OptionalInt quantity,
        List<Material> materials,
        Optional<String> machine,
        Optional<String> program,
        Optional<Person> inspector,
        Optional<LocalDate> date,
        Optional<FirstArticleReason> firstArticle,
        Optional<String> certificateNumber,
        List<SpecialProcess> processes,
        Optional<InspectionDocument> inspectionDocument) {

    /** Nothing stated. */
    public static final Job NOT_STATED = new Job(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            List.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            List.of(),
            Optional.empty());

    /** Copies the lists. */
    public Job {
        materials = List.copyOf(materials);
        processes = List.copyOf(processes);
    }

    /** The same, issued by that firm unless it states another. */
    public Job issuedBy(Firm firm) {
        return issuer.isPresent()
                ? this
                : new Job(
                        Optional.of(firm),
                        customer,
                        job,
                        batch,
                        order,
                        quantity,
                        materials,
                        machine,
                        program,
                        inspector,
                        date,
                        firstArticle,
                        certificateNumber,
                        processes,
                        inspectionDocument);
    }

    /**
     * A firm.
     *
     * @param name its name
     * @param address its address
     */
    public record Firm(String name, Optional<String> address) {}

    /**
     * A material as delivered.
     *
     * @param grade the grade
     * @param heat the heat or lot
     * @param certificate the number of its certificate
     */
    public record Material(String grade, Optional<String> heat, Optional<String> certificate) {}

    /**
     * A person who signs.
     *
     * @param name the name
     * @param position the position in the firm
     */
    public record Person(String name, Optional<String> position) {}

    /**
     * What kind of first article this is.
     *
     * @param kind full, partial or delta
     * @param reason why it was made
     * @param baseline the first article that a delta starts from
     * @param changes what changed since
     * @param characteristics the numbers of the characteristics that a partial or a delta covers; none where all are
     */
    public record FirstArticleReason(
            Kind kind,
            Optional<String> reason,
            Optional<String> baseline,
            Optional<String> changes,
            List<String> characteristics) {
        /** Copies the list. */
        public FirstArticleReason {
            characteristics = List.copyOf(characteristics);
        }
    }

    /**
     * A special process, such as anodising or welding.
     *
     * @param name what was done
     * @param specification by which specification
     * @param by by whom
     * @param certificate the number of its certificate
     */
    public record SpecialProcess(
            String name, Optional<String> specification, Optional<String> by, Optional<String> certificate) {}

    /** The inspection documents of EN 10204:2004, for metallic products. */
    public enum InspectionDocument {
        /** Declaration of compliance with the order, without results. */
        TYPE_2_1("2.1"),
        /** Test report, results of nonspecific inspection. */
        TYPE_2_2("2.2"),
        /** Inspection certificate, validated by the manufacturer's own authorised inspection representative. */
        TYPE_3_1("3.1"),
        /** Inspection certificate, validated by a representative of the purchaser or of the authorities as well. */
        TYPE_3_2("3.2");

        private final String word;

        InspectionDocument(String word) {
            this.word = word;
        }

        /** The type as the standard numbers it. */
        public String word() {
            return word;
        }
    }

    /** How much of the drawing a first article covers. */
    public enum Kind {
        /** Every characteristic of the drawing. */
        FULL("full"),
        /** A part of them. */
        PARTIAL("partial"),
        /** Those that a change touches. */
        DELTA("delta");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The word in files and on sheets. */
        public String word() {
            return word;
        }
    }
}
