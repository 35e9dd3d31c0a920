package io.github.firstoff.command;

import java.time.Instant;

/**
 * A kind of sheet: how it is made from files, and so how it is made again from what a sheet carries. It must open every file that it reads from
 * the shelf, and ask nothing but ingredients, shelf and time: then the same sheet comes out. {@link SheetRecipes} lists them.
 */
interface SheetRecipe {
    /** The command that makes such sheets. */
    String command();

    /**
     * Makes one.
     *
     * @param from what it is made from
     * @param shelf gives the bytes for the name of a file
     * @param now the time of the sheet
     * @throws io.github.firstoff.intake.InputRefused if an input cannot be used
     */
    MadeSheet make(Ingredients from, Inputs.Shelf shelf, Instant now);
}
