package io.github.firstoff.command;

import io.github.firstoff.proof.CarriedFile;
import io.github.firstoff.proof.Evidence;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** What the commands that study something have in common: files in, a sheet that proves itself and a result out. */
abstract class StudyCommand implements Callable<Integer> {
    private final SheetRecipe recipe;
    private final Console console;

    @Spec
    private @Nullable CommandSpec spec;

    @Option(names = "--out", paramLabel = "FILE.pdf", description = "Where the sheet goes. Without it no PDF is made.")
    private @Nullable Path out;

    @Mixin
    private final StationeryOptions stationery = new StationeryOptions();

    @Mixin
    private final SigningOptions signing = new SigningOptions();

    @Option(names = "--json", description = "Put the result on standard output as one JSON document.")
    private boolean json;

    StudyCommand(SheetRecipe recipe, Console console) {
        this.recipe = recipe;
        this.console = console;
    }

    /** The files and choices that the command line names, apart from the stationery. */
    abstract Ingredients ingredients();

    @Override
    public Integer call() {
        Instant now = Clock.now(line());
        Optional<SigningOptions.Pen> pen = pen(now);
        FileShelf shelf = shelf();
        Ingredients from = onStationery(ingredients());
        MadeSheet made = make(from, shelf, now);
        keep(shelf.opened());
        return tell(made, shelf.kept(), from, pen);
    }

    /** Whether a sheet is to be set as PDF. */
    final boolean makesPdf() {
        return out != null;
    }

    final CommandLine line() {
        return Objects.requireNonNull(spec).commandLine();
    }

    /** Whether standard output is to hold one document and nothing else. */
    final boolean isJson() {
        return json;
    }

    /** The key that signs the sheet; empty if no signature is asked for. */
    final Optional<SigningOptions.Pen> pen(Instant now) {
        return signing.penFor(line(), out, now);
    }

    /** Files as they are, kept if a sheet is to carry them. */
    final FileShelf shelf() {
        return new FileShelf(out != null, console.in());
    }

    /** These ingredients, and on what they are printed. */
    final Ingredients onStationery(Ingredients from) {
        stationery.requireKnownLanguage(line());
        return from.with(CarriedFile.Role.HOUSE, stationery.house()).choosing(stationery.options());
    }

    /** Makes the sheet, unless it would be written over one of its inputs. */
    final MadeSheet make(Ingredients from, Inputs.Shelf shelf, Instant now) {
        keep(from);
        return recipe.make(from, shelf, now);
    }

    /** Refuses to write the sheet over something that is to be read. */
    final void keep(Ingredients from) {
        keep(from.paths());
    }

    /** Refuses to write the sheet over something that was read. */
    final void keep(List<Path> inputs) {
        Overwriting.refuse(line(), "--out", out, inputs);
    }

    /** The same of a table, and where both would go to one file. */
    final void keep(List<Path> inputs, @Nullable Path csv) {
        keep(inputs);
        Overwriting.refuse(line(), "--csv", csv, inputs);
        Overwriting.refuseOneFile(line(), out, csv);
    }

    /** Prints the sheet where it is wanted, and tells the result. */
    final int tell(MadeSheet made, List<Evidence.Kept> kept, Ingredients from, Optional<SigningOptions.Pen> pen) {
        print(made, kept, from, pen);
        return tell(made);
    }

    /** Says what should be known of the inputs, and prints the sheet where it is wanted. */
    final void print(MadeSheet made, List<Evidence.Kept> kept, Ingredients from, Optional<SigningOptions.Pen> pen) {
        made.notices().forEach(notice -> console.message("note: " + notice));
        if (out != null) {
            new SheetPress(made, kept, from.options())
                    .print(pen, out)
                    .forEach(message -> console.message("note: " + message));
        }
    }

    /** Tells the result: JSON or a few lines. */
    final int tell(MadeSheet made) {
        if (json) {
            made.claim().write(console.outWriter());
        } else {
            made.lines().stream().map(each -> each.replace('\u00A0', ' ')).forEach(console::result);
            if (out != null) {
                console.result("Written: " + out);
            }
        }
        console.flush();
        return made.accepted() ? ExitCodes.ACCEPTED : ExitCodes.NOT_ACCEPTED;
    }
}
