package io.github.firstoff.command;

import io.github.firstoff.inspection.House;
import io.github.firstoff.intake.Fault;
import io.github.firstoff.intake.HouseFile;
import io.github.firstoff.intake.IntakeSettings;
import io.github.firstoff.intake.Mapping;
import io.github.firstoff.intake.Notice;
import io.github.firstoff.intake.RowCounts;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.remark.Remark;
import io.github.firstoff.sheet.Provenance;
import io.github.firstoff.words.Labels;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;

/** The files that a sheet was made from, as it names them, and what should be known of them. */
final class Sources {
    private final List<String> names = new ArrayList<>();
    private final List<String> hashes = new ArrayList<>();
    private final List<Remark> notices = new ArrayList<>();

    /** One more file. */
    void add(String name, String sha256) {
        names.add(Inputs.nameOf(name));
        hashes.add(sha256);
    }

    /** What should be known: as it stands on a sheet that travels, without the folders of this machine. */
    void add(List<Notice> found) {
        found.stream()
                .map(notice -> new Notice(
                                new Fault.Where(
                                        Inputs.nameOf(notice.where().file()),
                                        notice.where().sheet(),
                                        notice.where().line(),
                                        notice.where().column(),
                                        notice.where().field()),
                                notice.remark())
                        .told())
                .filter(told -> !notices.contains(told))
                .forEach(notices::add);
    }

    /** The house among the ingredients, with its logo; empty for plain paper. */
    Optional<House> house(Ingredients from, Inputs.Shelf shelf) {
        return from.first(Role.HOUSE).map(name -> {
            HouseFile file = HouseFile.read(shelf.open(Role.HOUSE, 1, name), Labels.languages());
            add(name, file.sha256());
            file.logoName().ifPresent(logo -> add(logo, file.logoSha256().orElse("")));
            add(file.notices());
            return file.house();
        });
    }

    /** How readings are read, with the mapping among the ingredients. */
    IntakeSettings settings(Ingredients from, Inputs.Shelf shelf) {
        ReadingChoices choices = ReadingChoices.of(from.options());
        Optional<Mapping> mapping = from.first(Role.MAPPING).map(name -> {
            Mapping file = Mapping.read(shelf.open(Role.MAPPING, 1, name));
            add(name, file.sha256());
            add(file.notices());
            return file;
        });
        return new IntakeSettings(choices.decimalMark(), choices.sheet(), mapping, row -> {});
    }

    /** What should be known of the files. */
    List<Remark> notices() {
        return List.copyOf(notices);
    }

    /** Where the sheet comes from. */
    Provenance provenance(Instant now, RowCounts rows) {
        return new Provenance(ProgramVersion.text(), now, together(hashes), names, rows);
    }

    /** One hash over the hashes of all files, in the order of the command line. */
    static String together(List<String> hashes) {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            for (String hash : hashes) {
                digest.update(hash.getBytes(StandardCharsets.US_ASCII));
                digest.update((byte) '\n');
            }
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchAlgorithmException fault) {
            throw new IllegalStateException("every Java has SHA-256", fault);
        }
    }
}
