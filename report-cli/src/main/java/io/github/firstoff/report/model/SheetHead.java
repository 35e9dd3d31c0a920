package io.github.firstoff.report.model;

/**
 * Which part a sheet speaks of; printed at the head of every page. A field that is not known is empty and leaves no gap.
 *
 * @param partNumber drawing or part number
 * @param partName   what the part is called
 * @param revision   revision of the drawing
 * @param batch      batch, or empty
 * @param hand       the hand of the part
 */
public record SheetHead(String partNumber, String partName, String revision, String batch, Hand hand) {}
