/**
 * Results for other programs: VTK, glTF, CSV, and a page for a browser.
 *
 * <p>Purpose: an engineer goes on with the numbers where Baymist ends, and a report is looked at where Baymist is not installed. Nothing
 * here computes physics; all numbers are the result's own, and the units stand in their names.
 *
 * <ol>
 *   <li>{@link baymist.export.RunWatch} looks on while a job runs and keeps fog and air at the times that are asked for, and what arrived
 *       on each surfel.
 *   <li>{@link baymist.export.Exports} writes a folder of files from the result and what the watch kept.
 *   <li>{@link baymist.export.HtmlReport} writes one page with everything in it, the library that draws the 3-D view included.
 * </ol>
 *
 * <p>Assumptions: the folder's file system can move files in one step, so that no file is ever half written. Limits: numbers on voxels
 * and places of triangles are written in single precision (seven digits); film on surfels in double.
 *
 * <p>Formats: VTK XML (Kitware, VTK File Formats), glTF 2.0 (Khronos Group 2017, ISO/IEC 12113:2022), CSV (RFC 4180). What each array
 * and column means: docs/formats/vtk.md, gltf.md, csv.md.
 */
@NullMarked
package baymist.export;

import org.jspecify.annotations.NullMarked;
