/** Tests of the printed card. */
package baymist.print;
