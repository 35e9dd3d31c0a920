package io.github.firstoff.command;

import io.github.firstoff.sheet.SheetKind;
import java.util.List;
import java.util.Optional;

/** Every kind of sheet that can be made again. */
final class SheetRecipes {
    private static final List<SheetRecipe> ALL = List.of(
            new InspectionRecipe(SheetKind.FIRST_ARTICLE),
            new InspectionRecipe(SheetKind.BATCH),
            new InspectionRecipe(SheetKind.CERTIFICATE),
            new FitRecipe(),
            new StackRecipe(),
            new DriftRecipe(),
            new HistoryRecipe());

    private SheetRecipes() {}

    /** The kind that a command makes; empty if this program makes no such sheet. */
    static Optional<SheetRecipe> of(String command) {
        return ALL.stream().filter(each -> each.command().equals(command)).findFirst();
    }
}
