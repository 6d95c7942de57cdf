/** Tests of the command line. */
package baymist.cli;
