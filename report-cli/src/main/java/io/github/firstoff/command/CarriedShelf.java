package io.github.firstoff.command;

import io.github.firstoff.intake.Input;
import io.github.firstoff.proof.CarriedFile;
import io.github.firstoff.proof.CarriedFile.Role;
import io.github.firstoff.proof.Evidence;
import io.github.firstoff.proof.SheetFile;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The files that a sheet carries as inputs, so that it can be made again from them. */
final class CarriedShelf implements Inputs.Shelf {
    private final SheetFile sheet;
    private final List<Evidence.Kept> kept = new ArrayList<>();

    CarriedShelf(SheetFile sheet) {
        this.sheet = sheet;
    }

    /** Whether the sheet carries everything that it was made from. */
    boolean isWhole() {
        return sheet.manifest().inputs().stream()
                .allMatch(each -> each.attachment().flatMap(sheet::attachment).isPresent());
    }

    @Override
    public Input open(Role role, int place, String name) {
        List<CarriedFile> files = files(role);
        Optional<byte[]> bytes = place > files.size()
                ? Optional.empty()
                : files.get(place - 1).attachment().flatMap(sheet::attachment);
        if (bytes.isEmpty()) {
            return Input.stream(name, new ByteArrayInputStream(new byte[0]));
        }
        kept.add(new Evidence.Kept(files.get(place - 1), bytes.get()));
        return Input.bytes(name, bytes.get(), relative -> switch (role) {
            case PLAN -> beside(Role.COUNTERPART);
            case HOUSE -> beside(Role.LOGO);
            default -> Optional.empty();
        });
    }

    private Optional<Input> beside(Role role) {
        return files(role).stream().findFirst().map(file -> open(role, 1, file.name()));
    }

    /** What was opened, in that order. */
    List<Evidence.Kept> kept() {
        return List.copyOf(kept);
    }

    private List<CarriedFile> files(Role role) {
        return sheet.manifest().inputs().stream()
                .filter(each -> each.role() == role)
                .toList();
    }
}
